import { version } from '$app/environment';
import type { CellId, StudyCell } from '$src/cells/kinds';
import { bench } from '../bench.svelte';
import { studyPoursAtOnce } from '../cores';
import { desk } from '../desk.svelte';
import { pointOf, putPoint } from '../storage';
import { noteStudy, studyAsItWas } from './asItWas';
import { isCurrent, offers, planOf, runs } from './shownStudies.svelte';
import { StudyPool } from './studyPool';
import { StudyRun } from './studyRun.svelte';

async function makeClient() {
  const { createPourClient } = await import('$src/worker/client');
  return createPourClient();
}

/** Runs whatever is asked beside the book's own pours, after them; one for all studies. */
export const pool = new StudyPool({
  makeClient,
  atOnce: studyPoursAtOnce(),
  paceOfPage: (meshCells) => bench.queue.coarsePace.each(meshCells),
  isBusy: () => bench.queue.progress.size > 0,
  // Another version may compute other figures, so what it kept is not taken.
  stored: {
    get: (planHash) => pointOf(`${version} ${planHash}`),
    put: (planHash, result) => putPoint(`${version} ${planHash}`, result),
  },
});
/**
 * Shows what is known of a study as it now stands, by plan hash. What is not known is offered and not poured: a window
 * is hundreds of pours, and a book may be open to be read. What is shown of an earlier state stays until then.
 */
export async function keepStudy(cell: StudyCell): Promise<void> {
  const plan = planOf(cell);
  const before = runs.get(cell.id);
  if (!plan || bench.evaluation(cell.id).state !== 'ready') {
    before?.stop();
    offers.delete(cell.id);
    return;
  }
  const known = [before, offers.get(cell.id)].find((run) => run && isCurrent(run, cell));
  if (known) {
    if (known === before && known.state !== 'waiting') offers.delete(cell.id);
    return;
  }
  before?.stop();
  const run = new StudyRun(pool, plan, cell.study);
  offers.set(cell.id, run);
  await run.look();
  if (offers.get(cell.id) !== run) return;
  const isWhole = run.state === 'fresh';
  if (isWhole) offers.delete(cell.id);
  else await showAsItWas(cell);
  if (isWhole || (offers.get(cell.id) === run && run.poured > 0 && !runs.get(cell.id)?.poured))
    show(cell.id, run);
}

function show(id: CellId, run: StudyRun): void {
  runs.set(id, run);
  noteStudy(desk.bookId, id, run);
}

/** A study that was out of date when the page was loaded anew is shown as it was, until the one that stands is begun. */
async function showAsItWas(cell: StudyCell): Promise<void> {
  const was = studyAsItWas(desk.bookId, cell.id);
  if (!was || runs.get(cell.id)?.poured) return;
  const { opened } = bench;
  const run = new StudyRun(pool, was.base, was.study);
  if (isCurrent(run, cell)) return;
  await run.look();
  const isThere = bench.opened === opened && bench.cell(cell.id) !== null;
  if (run.poured > 0 && isThere && !runs.get(cell.id)?.poured) show(cell.id, run);
}

/**
 * Begins the study as it now stands. What was offered may be older: a range typed a moment ago is looked up only once its
 * typing rests, and whoever presses means what stands in the field.
 */
export function beginStudy(cell: StudyCell): void {
  const plan = planOf(cell);
  if (!plan || bench.evaluation(cell.id).state !== 'ready') return;
  const offer = offers.get(cell.id);
  const before = runs.get(cell.id);
  if (before?.state === 'running' && isCurrent(before, cell)) return;
  before?.stop();
  const run = offer && isCurrent(offer, cell) ? offer : new StudyRun(pool, plan, cell.study);
  offers.delete(cell.id);
  show(cell.id, run);
  void run.start();
}
