import type { Cell, StudyCell } from '$src/cells/kinds';
import { percentText } from '$src/report/wording';
import type { Bench } from './bench.svelte';
import type { PourRun } from './cellRun.svelte';
import { isCurrent, studyRun } from './study/shownStudies.svelte';
import type { StudyRun } from './study/studyRun.svelte';

export type StateWord =
  | 'fresh'
  | 'out of date'
  | 'running'
  | 'waiting'
  | 'stopped'
  | 'failed'
  | 'blocked'
  | 'wrong input';

/** State of a cell as the rail and the title strip tell it: a word, a shape, and for a run its share done. */
export interface CellState {
  readonly word: StateWord;
  readonly text: string;
  readonly done: number;
}

const plain = (word: StateWord): CellState => ({ word, text: word, done: 0 });

function runningState(done: number): CellState {
  return { word: 'running', text: `running ${percentText(Math.floor(done * 100) / 100)}`, done };
}

function pourState({ state, done }: PourRun): CellState {
  if (state === 'none') return plain('waiting');
  return state === 'running' ? runningState(done) : plain(state);
}

/** What is worst among the pours of a comparison is what it tells. */
const WORST_FIRST = ['failed', 'waiting', 'out of date', 'stopped'] as const;

function compareState(runs: readonly PourRun[]): CellState {
  const running = runs.filter((run) => run.state === 'running');
  if (running.length > 0) return runningState(runs.reduce((sum, run) => sum + run.done, 0) / runs.length);
  const worst = WORST_FIRST.find((word) => runs.some((run) => pourState(run).word === word));
  return plain(worst ?? 'fresh');
}

function studyState(cell: StudyCell, run: StudyRun | null): CellState {
  if (!run) return plain('waiting');
  if (!isCurrent(run, cell)) return plain('out of date');
  return run.state === 'running' ? runningState(run.done) : plain(run.state);
}

/** Notes have no state. */
export function cellState(bench: Bench, cell: Cell): CellState | null {
  if (cell.kind === 'note') return null;
  // It asks which pour; that is no mistake.
  if (cell.kind === 'study' && cell.pour === null) return plain('waiting');
  const evaluation = bench.evaluation(cell.id);
  if (evaluation.state === 'needs a run') return pourState(bench.run(cell.id));
  if (evaluation.state !== 'ready') return plain(evaluation.state);
  if (cell.kind === 'study') return studyState(cell, studyRun(cell.id));
  if (cell.kind === 'shop card') return compareState([bench.run(cell.pour!)]);
  return cell.kind === 'compare' ? compareState(cell.pours.map((id) => bench.run(id))) : plain('fresh');
}
