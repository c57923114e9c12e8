import { SvelteMap } from 'svelte/reactivity';
import { version } from '$app/environment';
import type { CellId, StudyCell } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import { studyPlan } from '$src/report/study/studyPlan';
import { bench } from '../bench.svelte';
import { pointOf, putPoint } from '../storage';
import { StudyPool } from './studyPool';
import { StudyRun } from './studyRun.svelte';

async function makeClient() {
  const { createPourClient } = await import('$src/worker/client');
  return createPourClient();
}

function coresToUse(): number {
  return typeof navigator === 'undefined' ? 1 : Math.max(1, Math.min(8, navigator.hardwareConcurrency ?? 1));
}

/** Runs whatever is asked beside the book's own pours, after them; one for all studies. */
export const pool = new StudyPool({
  makeClient,
  atOnce: coresToUse(),
  isBusy: () => bench.queue.progress.size > 0,
  // Another version may compute other figures, so what it kept is not taken.
  stored: {
    get: (planHash) => pointOf(`${version} ${planHash}`),
    put: (planHash, result) => putPoint(`${version} ${planHash}`, result),
  },
});
const runs = new SvelteMap<CellId, StudyRun>();

/** The run of a study cell as it was last begun; it may belong to inputs before the last change. */
export const studyRun = (id: CellId): StudyRun | null => runs.get(id) ?? null;

/** The plan a study varies; null while its pour is not in order. */
export function planOf(cell: StudyCell): PourPlan | null {
  const evaluation = cell.pour === null ? null : bench.evaluation(cell.pour);
  return evaluation?.state === 'needs a run' ? evaluation.plan : null;
}

export function isCurrent(run: StudyRun, cell: StudyCell): boolean {
  const plan = planOf(cell);
  const now = plan && studyPlan(plan, cell.study);
  return JSON.stringify([run.study, run.plan]) === JSON.stringify([cell.study, now]);
}

/** Begins the study anew when its inputs have changed; what is known by plan hash is not computed again. */
export function keepStudy(cell: StudyCell): void {
  const plan = planOf(cell);
  const before = runs.get(cell.id);
  if (!plan || bench.evaluation(cell.id).state !== 'ready') {
    before?.stop();
    return;
  }
  if (before && isCurrent(before, cell)) return;
  before?.stop();
  const run = new StudyRun(pool, plan, cell.study);
  runs.set(cell.id, run);
  void run.start();
}
