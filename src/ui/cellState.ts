import { guessesHiding } from '$src/cells/guessHides';
import type { Cell, StudyCell } from '$src/cells/kinds';
import { percentText } from '$src/report/wording';
import type { Bench } from './bench.svelte';
import type { PourRun } from './cellRun.svelte';
import { isIncomplete } from './issueAt';
import { isCurrent, studyRun } from './study/shownStudies.svelte';
import type { StudyRun } from './study/studyRun.svelte';

export type StateWord =
  | 'fresh'
  | 'out of date'
  | 'running'
  | 'waiting'
  | 'open'
  | 'hidden'
  | 'stopped'
  | 'failed'
  | 'blocked'
  | 'wrong input'
  | 'not complete yet';

/** State of a cell as the rail and the title strip tell it: a word, a shape, and for a run its share done. */
export interface CellState {
  readonly word: StateWord;
  readonly text: string;
  readonly done: number;
}

const plain = (word: StateWord, text: string = word): CellState => ({ word, text, done: 0 });
/** Nothing of a study is poured before somebody says so; a pour waits for its turn alone. */
const NOT_BEGUN = plain('waiting', 'not begun');

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
  if (!run) return NOT_BEGUN;
  if (!isCurrent(run, cell)) return plain('out of date');
  if (run.state === 'waiting') return plain('waiting', 'not finished');
  return run.state === 'running' ? runningState(run.done) : plain(run.state);
}

/** Notes have no state. Of a guess that is still to be given it is told, and of what that keeps hidden. */
export function cellState(bench: Bench, cell: Cell): CellState | null {
  if (cell.kind === 'note') return null;
  const state = stateOf(bench, cell);
  if (state.word !== 'fresh') return state;
  if (cell.kind === 'guess') return cell.given ? state : plain('open', 'guess open');
  const isHidden = guessesHiding({ cells: bench.cellsOfKind('guess') }, cell).length > 0;
  return isHidden && cell.kind !== 'castings' ? plain('hidden') : state;
}

function stateOf(bench: Bench, cell: Cell): CellState {
  // It asks which pour; that is no mistake.
  if (cell.kind === 'study' && cell.pour === null) return NOT_BEGUN;
  const evaluation = bench.evaluation(cell.id);
  if (evaluation.state === 'needs a run') return pourState(bench.run(cell.id));
  if (isIncomplete(evaluation)) return plain('not complete yet');
  if (evaluation.state !== 'ready') return plain(evaluation.state);
  if (cell.kind === 'study') return studyState(cell, studyRun(cell.id));
  if (cell.kind === 'shop card') return compareState([bench.run(cell.pour!)]);
  return cell.kind === 'compare' ? compareState(cell.pours.map((id) => bench.run(id))) : plain('fresh');
}
