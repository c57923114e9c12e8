import { SvelteMap } from 'svelte/reactivity';
import type { CellId, StudyCell } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import { studyPlan } from '$src/report/study/studyPlan';
import { bench } from '../bench.svelte';
import type { StudyRun } from './studyRun.svelte';

/** Which studies there are. What runs them is fetched with the first study that is shown. */
export const runs = new SvelteMap<CellId, StudyRun>();
/** Studies as they now stand that would have to pour, and do not before somebody says so. */
export const offers = new SvelteMap<CellId, StudyRun>();

/** The run of a study cell as it was last begun; it may belong to inputs before the last change. */
export const studyRun = (id: CellId): StudyRun | null => runs.get(id) ?? null;

/**
 * A study goes with its cell and with its book: what nobody can see is poured no further, and never shown in another book
 * whose cell has the same id. What was poured stays known, and is there again when the cell is brought back.
 */
export function endStudies(stay: readonly CellId[]): void {
  for (const studies of [runs, offers])
    for (const [id, run] of studies) {
      if (stay.includes(id)) continue;
      run.stop();
      studies.delete(id);
    }
}

/** The plan a study varies; null while its pour is not in order. */
export function planOf(cell: StudyCell): PourPlan | null {
  const evaluation = cell.pour === null ? null : bench.evaluation(cell.pour);
  return evaluation?.state === 'needs a run' ? evaluation.plan : null;
}

/** The study as it stands that waits to be begun; null when there is none, or while it is not known what is lacking. */
export function studyOffer(id: CellId): StudyRun | null {
  const offer = offers.get(id);
  return offer && offer.lacking !== null ? offer : null;
}

export function isCurrent(run: StudyRun, cell: StudyCell): boolean {
  const plan = planOf(cell);
  if (run.base === plan && run.study === cell.study) return true;
  const now = plan && studyPlan(plan, cell.study);
  return JSON.stringify([run.study, run.plan]) === JSON.stringify([cell.study, now]);
}
