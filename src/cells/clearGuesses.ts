import type { Book, Cell, GuessCell } from './kinds';

/** Something was answered, given or not. */
const isAnswered = (cell: Cell): cell is GuessCell =>
  cell.kind === 'guess' && (cell.given || cell.picked !== null || cell.drawn.length > 0);

/**
 * The book as the next class finds it: no guess is answered, and what they hide is hidden again. Notes below the last guess
 * unfolded with the last answer (`giveGuess`); once all were given they are folded again. The same book where nothing
 * was answered.
 */
export function clearGuesses(book: Book): Book {
  if (!book.cells.some(isAnswered)) return book;
  const guesses = book.cells.filter((cell) => cell.kind === 'guess');
  const last = guesses.every(({ given }) => given)
    ? book.cells.findLastIndex(({ kind }) => kind === 'guess')
    : book.cells.length;
  const cells = book.cells.map((cell, place): Cell => {
    if (isAnswered(cell)) return { ...cell, given: false, picked: null, drawn: [] };
    return cell.kind === 'note' && place > last && !cell.folded ? { ...cell, folded: true } : cell;
  });
  return { ...book, cells };
}
