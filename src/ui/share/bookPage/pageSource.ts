import type { Evaluation } from '$src/cells/evaluate';
import type { Book, CellId, StudyCell } from '$src/cells/kinds';
import type { KeptStudy } from '$src/report/bookPage/studyPart';
import type { PourRun } from '../../cellRun.svelte';

/** The run of a pour as far as a saved page tells of it. */
export type PageRun = Pick<PourRun, 'record' | 'current' | 'coarse' | 'state'>;

/** What the parts of a saved page are made from: the book, what its cells come to, and what is computed of it. */
export interface PageSource {
  readonly book: Book;
  readonly evaluations: ReadonlyMap<CellId, Evaluation>;
  run(pour: CellId): PageRun;
  /** Null when nothing of it is known in the page. */
  study(cell: StudyCell): KeptStudy | null;
}
