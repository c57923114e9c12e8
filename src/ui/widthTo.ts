type Listener = (width: number) => void;

const listeners = new Map<Element, Listener>();
let observer: ResizeObserver | undefined;

/** All that were resized are read together, when the browser has just laid the page out. */
function tell(entries: readonly ResizeObserverEntry[]): void {
  for (const { target } of entries) {
    const { clientWidth } = target;
    if (clientWidth > 0) listeners.get(target)?.(clientWidth);
  }
}

/**
 * Tells the width of an element [px, with its padding], once it is laid out and whenever that changes; nothing while it is
 * not shown. A width asked for at once, as a bound one is, makes the browser lay out the page for every chart
 * that comes: half the time of a record's arrival.
 */
export function widthTo(listener: Listener): (node: Element) => () => void {
  return (node) => {
    observer ??= new ResizeObserver(tell);
    listeners.set(node, listener);
    observer.observe(node);
    return () => {
      observer?.unobserve(node);
      listeners.delete(node);
    };
  };
}
