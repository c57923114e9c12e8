import { flushSync, untrack } from 'svelte';
import { drawInTurn } from './drawingTurns';

/**
 * What a part is drawn from, at the latest one turn behind. A record that arrives changes all the parts that show it; each is
 * then drawn anew in a turn of its own, and not all of them in one piece. The first value is there at once. Call it where
 * the component is made, and what it gives inside the markup or a `$derived`.
 */
export function inOwnTurn<T>(read: () => T): () => T {
  let shown: T = $state.raw(untrack(read));
  $effect(() => {
    const now = read();
    if (now === untrack(() => shown)) return undefined;
    const draw = (): void =>
      flushSync(() => {
        shown = now;
      });
    return drawInTurn(draw, true);
  });
  return () => shown;
}
