import type { CellId } from '$src/cells/kinds';
import { bench } from './bench.svelte';

/**
 * Reads what a cell shows; while a hand drags something and the cell is out of the window, gives what was read last.
 * Nobody sees it then, and the hand has the time. Read again as soon as the cell is in view or the hand lets go. Call it
 * where the cell's component is made, and what it gives inside a `$derived`.
 */
export function keptAway<T>(id: () => CellId, read: () => T): () => T {
  let last: { readonly value: T } | null = null;
  return () => {
    if (!last || !bench.isAway(id())) last = { value: read() };
    return last.value;
  };
}
