import { bodies } from './bodies.svelte';
import { isAnyUndrawn } from './drawingTurns';

/** By these the user moves on. */
const MOVES = ['wheel', 'touchmove', 'keydown', 'pointerdown'] as const;

const isAllDrawn = (): boolean => bodies.isAllDrawn && !isAnyUndrawn();

/**
 * A cell that was gone to stays where it was brought to while the cells above it are still being drawn and grow, until
 * the user moves on; later the browser itself holds what is in view.
 * @param book what grows
 * @returns the undoing
 */
export function keepLanding(book: HTMLElement): () => void {
  /** A link into the page may come before its cell does. */
  let target: string | null = location.hash.slice(1) || null;

  const leave = () => {
    target = null;
  };
  const land = () => {
    if (target === null) return;
    document.getElementById(target)?.scrollIntoView({ block: 'start', behavior: 'instant' });
    if (isAllDrawn()) leave();
  };
  const follow = (event: Event) => {
    const link = event.target instanceof Element ? event.target.closest('a[href^="#"]') : null;
    if (link && !isAllDrawn()) target = link.getAttribute('href')!.slice(1);
  };

  const growth = new ResizeObserver(land);
  growth.observe(book);
  document.addEventListener('click', follow);
  for (const move of MOVES) addEventListener(move, leave, { passive: true, capture: true });
  return () => {
    growth.disconnect();
    document.removeEventListener('click', follow);
    for (const move of MOVES) removeEventListener(move, leave, { capture: true });
  };
}
