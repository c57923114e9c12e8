import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellId } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { nearestTiltText } from '$src/report/nearestTiltText';

/** An issue of a book, with the cell it is in. */
export interface BookIssue extends Issue {
  readonly cell: CellId;
  readonly cellName: string;
}

/** Cells whose issues are about what they hold under this field; in the others paths start at the cell. */
const HOLDS = new Set(['section', 'metal', 'tilt']);

/** Everything wrong with what a readable book holds, in book order; paths as in the file, from `book.` on. */
export function bookIssues(book: Book): BookIssue[] {
  const evaluations = evaluateBook(book);
  return book.cells.flatMap((cell, index) => {
    const evaluation = evaluations.get(cell.id);
    if (evaluation?.state !== 'wrong input') return [];
    const holder = ['book.cells', index, ...(HOLDS.has(cell.kind) ? [cell.kind] : [])].join('.');
    const offer = offerOf(cell);
    return evaluation.issues.map((issue, number) => ({
      ...issue,
      remedy: number === 0 ? `${issue.remedy}${offer}` : issue.remedy,
      path: issue.path === '' ? holder : `${holder}.${issue.path}`,
      cell: cell.id,
      cellName: cell.name,
    }));
  });
}

/** What the page offers on a button: the nearest tilt the machine can do. */
function offerOf(cell: Cell): string {
  const nearest = cell.kind === 'tilt' ? checkTilt(cell.tilt).nearest : null;
  return nearest ? ` The nearest the machine can do: ${nearestTiltText(nearest)}.` : '';
}
