import type { CellId } from '$src/cells/kinds';
import type { PourRecord } from '$src/core/pour/record';
import { type NumberedFold, numberedFolds } from '$src/report/numberedFolds';
import { bench } from '../bench.svelte';
import type { RunLook } from '../charts/runLook';
import { looksOfPours } from '../pour/lookOfPour';

/** A pour as a comparison shows it. */
export interface ComparedPour {
  readonly id: CellId;
  readonly name: string;
  readonly record: PourRecord;
  /** What its metal is called. */
  readonly metal?: string;
  readonly look: RunLook;
  readonly folds: readonly NumberedFold[];
  /** Drawn from the coarse mesh. */
  readonly sketch: boolean;
}

/**
 * The chosen pours that have a record, in the order chosen. Whether a record still holds is not told here: figures,
 * pictures and charts stay the same when it does not.
 */
export function comparedPours(ids: readonly CellId[]): ComparedPour[] {
  const looks = looksOfPours(ids);
  return ids.flatMap((id, index) => {
    const cell = bench.cell(id);
    const run = bench.run(id);
    if (!cell || !run.record) return [];
    const metal = cell.kind === 'pour' ? bench.cell(cell.metal) : null;
    return {
      id,
      name: cell.name,
      record: run.record,
      ...(metal && { metal: metal.name }),
      look: looks[index]!,
      folds: numberedFolds(run.record),
      sketch: run.coarse,
    };
  });
}
