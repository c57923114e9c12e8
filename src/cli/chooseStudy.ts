import { type BookIssue, bookIssues } from '$src/book/bookIssues';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, StudyCell } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { SOLVER } from '$src/core/pour/runPour';
import { namedAxes } from '$src/report/study/namedAxes';
import type { Study } from '$src/report/study/study';
import type { StudyHead } from '$src/report/study/studyFile';
import { studyPlan } from '$src/report/study/studyPlan';

/** A study of a book, ready to be computed: what it is, and the pour it varies. */
export interface ChosenStudy {
  readonly head: StudyHead;
  readonly plan: PourPlan;
  readonly study: Study;
}

export type Chosen = ChosenStudy | { readonly issues: readonly (Issue | BookIssue)[] };

/** The study of that name or id; the only one when no name is given. */
export function chooseStudy(book: Book, name: string | null): Chosen {
  const studies = book.cells.filter((cell) => cell.kind === 'study');
  const meant = name === null ? studies : studies.filter((cell) => cell.name === name || cell.id === name);
  const [cell, another] = meant;
  if (!cell || another) return { issues: [noStudy(name, studies)] };
  return readyStudy(book, cell) ?? { issues: bookIssues(book) };
}

/** A study whose pour is in order; null while it or its pour is not. */
export function readyStudy(book: Book, cell: StudyCell): ChosenStudy | null {
  const evaluations = evaluateBook(book);
  const pour = evaluations.get(cell.pour ?? '');
  if (evaluations.get(cell.id)?.state !== 'ready' || pour?.state !== 'needs a run') return null;
  const plan = studyPlan(pour.plan, cell.study);
  return { plan, study: cell.study, head: headOf(book, cell, plan) };
}

function headOf(book: Book, cell: StudyCell, plan: PourPlan): StudyHead {
  return {
    book: book.title,
    casting: book.casting,
    cell: cell.name,
    pour: book.cells.find(({ id }) => id === cell.pour)!.name,
    solver: SOLVER,
    planHash: planHash(plan),
    meshCells: cell.study.meshCells,
    axes: namedAxes(cell.study.axes, plan),
  };
}

function noStudy(name: string | null, studies: readonly StudyCell[]): Issue {
  const known = studies.map((cell) => `“${cell.name}”`).join(', ') || 'none; the book has no study';
  const message = name === null ? 'Which study is meant?' : `There is no one study “${name}” in the book.`;
  return { path: 'book.cells', message, remedy: `Name one with --cell: ${known}.` };
}
