/** Parts that unfold above are drawn in turns; by then they are [ms]. */
const UNFOLDED = 4000;
/** Nearer the upper edge of the window than this, what is held would hardly be seen [px]. */
const LEAST = 64;
const MOVES = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;

/**
 * Keeps the top of an element where it stands in the window while what is above it changes its height; until the
 * reader moves on, or for a few seconds.
 */
export function holdInPlace(element: HTMLElement): void {
  const wanted = Math.max(LEAST, element.getBoundingClientRect().top);
  const until = performance.now() + UNFOLDED;
  const moved = new AbortController();
  for (const move of MOVES)
    addEventListener(move, () => moved.abort(), { signal: moved.signal, passive: true });
  const hold = (): void => {
    if (!element.isConnected || performance.now() > until) moved.abort();
    if (moved.signal.aborted) return;
    const off = element.getBoundingClientRect().top - wanted;
    if (Math.abs(off) >= 1) scrollBy({ top: off, behavior: 'instant' });
    requestAnimationFrame(hold);
  };
  requestAnimationFrame(hold);
}
