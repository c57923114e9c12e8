import type { Book, Cell, CellId, GuessCell } from './kinds';
import { needsOf } from './needs';

/**
 * The first guess that is still to be given and keeps the result of this cell hidden; null when it may be seen.
 * Hidden are the pours of the guess and all that shows what they came to. It helps a class to think first; whoever
 * reads the book file or the command line sees everything.
 */
export function guessHiding(book: Book, cell: Cell): GuessCell | null {
  if (cell.kind === 'guess' || !SHOWS_RESULTS.has(cell.kind)) return null;
  const shown = new Set<CellId>([cell.id, ...needsOf(cell)]);
  const hides = (other: Cell): other is GuessCell =>
    other.kind === 'guess' && other.hides && !other.given && other.pours.some((pour) => shown.has(pour));
  return book.cells.find(hides) ?? null;
}

const SHOWS_RESULTS: ReadonlySet<string> = new Set([
  'pour',
  'compare',
  'study',
  'castings',
  'card',
  'shop card',
]);

/** The first guess still to be given about a pour that takes this section: what is read off the section would answer it. */
export function guessOverSection(book: Book, section: CellId): GuessCell | null {
  const takes = (id: CellId): boolean =>
    book.cells.some((cell) => cell.id === id && cell.kind === 'pour' && cell.section === section);
  const asks = (cell: Cell): cell is GuessCell =>
    cell.kind === 'guess' && cell.hides && !cell.given && cell.pours.some(takes);
  return book.cells.find(asks) ?? null;
}
