import type { CellId } from '$src/cells/kinds';
import { bench } from '../bench.svelte';
import { type RunLook, runLook } from '../charts/runLook';

/** A pour keeps one look through the whole book: that of its place among the pours. */
export function lookOfPour(id: CellId): RunLook {
  return runLook(
    Math.max(
      0,
      bench.cellsOfKind('pour').findIndex((cell) => cell.id === id),
    ),
  );
}

/** Looks for pours drawn in one chart: their own, unless two would be alike. */
export function looksOfPours(ids: readonly CellId[]): RunLook[] {
  const own = ids.map(lookOfPour);
  return new Set(own).size === own.length ? own : ids.map((_, index) => runLook(index));
}
