import type { CellId } from '$src/cells/kinds';
import { bench } from '../bench.svelte';

/** A cell that has to be put right, and the first thing that is wrong with it. */
export interface Fault {
  readonly id: CellId;
  readonly name: string;
  readonly message: string;
}

/** What keeps these cells from being computed, each cell once; none for cells that only wait for their turn. */
export function faultsOf(ids: readonly CellId[]): Fault[] {
  const found = ids.flatMap((id): Fault[] => {
    const evaluation = bench.evaluation(id);
    if (evaluation.state === 'blocked') return faultsOf(evaluation.by);
    if (evaluation.state !== 'wrong input') return [];
    const name = bench.cell(id)?.name ?? 'the cell';
    return [{ id, name, message: evaluation.issues[0]?.message ?? '' }];
  });
  return [...new Map(found.map((fault) => [fault.id, fault])).values()];
}
