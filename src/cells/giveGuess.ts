import type { Book, CellId } from './kinds';

/**
 * The book with the guess given. Notes folded below the last guess are what a lesson keeps for afterwards: they unfold
 * with the last guess that was still to be given.
 */
export function giveGuess(book: Book, id: CellId): Book {
  const cells = book.cells.map((cell) =>
    cell.id === id && cell.kind === 'guess' ? { ...cell, given: true } : cell,
  );
  if (cells.some((cell) => cell.kind === 'guess' && !cell.given)) return { ...book, cells };
  const last = cells.findLastIndex((cell) => cell.kind === 'guess');
  return {
    ...book,
    cells: cells.map((cell, place) =>
      place > last && cell.kind === 'note' ? { ...cell, folded: false } : cell,
    ),
  };
}
