import type { StudyCell } from '$src/cells/kinds';
import type { StudyHead } from '$src/report/study/studyFile';
import { bench } from '../bench.svelte';
import type { StudyRun } from './studyRun.svelte';

/** What a table of a study needs to say of it; the rest of a head is for the files of the command line. */
export const pageHead = (cell: Pick<StudyCell, 'name'>, run: StudyRun): StudyHead => ({
  book: bench.book.title,
  casting: bench.book.casting,
  cell: cell.name,
  pour: '',
  solver: '',
  planHash: '',
  meshCells: run.study.meshCells,
  axes: run.axes,
});
