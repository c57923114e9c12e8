import { flushSync } from 'svelte';
import { drawNext } from './page/drawingTurns';

type Listener = (width: number) => void;

/** Someone who is to know a width. */
interface Told {
  readonly listener: Listener;
  /** As it was measured last [px]. */
  width: number;
  state: 'not measured' | 'waits for its turn' | 'drawn';
  /** Takes it out of the line. */
  leave: () => void;
}

const listeners = new Map<Element, Told>();
let observer: ResizeObserver | undefined;

/** All that were resized are read together, when the browser has just laid the page out. */
function tell(entries: readonly ResizeObserverEntry[]): void {
  const shown = entries.filter(({ target }) => target.clientWidth > 0);
  // Each goes before all that wait: the last one first, so that they are drawn from the top down.
  for (const { target } of shown.reverse()) {
    const told = listeners.get(target);
    if (!told) continue;
    told.width = target.clientWidth;
    if (told.state === 'drawn') told.listener(told.width);
    else if (told.state === 'not measured') awaitTurn(target, told);
  }
}

/** Several pictures that come at once would else be drawn in one piece. */
function awaitTurn(target: Element, told: Told): void {
  told.state = 'waits for its turn';
  target.toggleAttribute('data-undrawn', true);
  told.leave = drawNext(() => {
    told.state = 'drawn';
    target.toggleAttribute('data-undrawn', false);
    flushSync(() => told.listener(told.width));
  });
}

/**
 * Tells the width of an element [px, with its padding], once it is laid out and whenever that changes; nothing while it is
 * not shown. A width asked for at once, as a bound one is, makes the browser lay out the page for every chart
 * that comes: half the time of a record's arrival.
 */
export function widthTo(listener: Listener): (node: Element) => () => void {
  return (node) => {
    observer ??= new ResizeObserver(tell);
    listeners.set(node, { listener, width: 0, state: 'not measured', leave: () => undefined });
    observer.observe(node);
    return () => {
      observer?.unobserve(node);
      listeners.get(node)?.leave();
      listeners.delete(node);
    };
  };
}
