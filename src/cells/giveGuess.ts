import { guessesHiding } from './guessHides';
import type { Book, Cell, CellId } from './kinds';

/**
 * The book with the guess given. Notes folded below the last guess are what a lesson keeps for afterwards: they unfold
 * with the last guess that was still to be given. A note tied to a guess unfolds when it is shown.
 */
export function giveGuess(book: Book, id: CellId): Book {
  const cells = book.cells.map((cell) =>
    cell.id === id && cell.kind === 'guess' ? { ...cell, given: true } : cell,
  );
  const isLast = !cells.some((cell) => cell.kind === 'guess' && !cell.given);
  const last = isLast ? cells.findLastIndex((cell) => cell.kind === 'guess') : cells.length;
  const isHidden = (note: Cell, now: Pick<Book, 'cells'>): boolean => guessesHiding(now, note).length > 0;
  const unfolds = (cell: Cell, place: number): boolean =>
    cell.kind === 'note' && (place > last || (isHidden(cell, book) && !isHidden(cell, { cells })));
  return {
    ...book,
    cells: cells.map((cell, place) => (unfolds(cell, place) ? { ...cell, folded: false } : cell)),
  };
}
