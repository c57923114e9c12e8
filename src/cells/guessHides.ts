import { toldBy } from '$src/report/guess/ask';
import type { Book, Cell, CellId, GuessCell, NoteCell } from './kinds';
import { needsOf } from './needs';

/**
 * The guesses that hide this cell or its result until they are given, given or not: those about its pours, and for a note the
 * one it is tied to, with those that the answer of that one waits for.
 * Hidden are the pours of the guess and all that shows what they came to. A pour opens with the last of the guesses about
 * it, since it shows the answers to all of them. It helps a class to think first; whoever reads the book file or the
 * command line sees everything.
 */
export function guessesAbout(book: Pick<Book, 'cells'>, cell: Cell): GuessCell[] {
  if (cell.kind === 'note') return guessesOfNote(book, cell);
  if (cell.kind === 'guess' || !SHOWS_RESULTS.has(cell.kind)) return [];
  const shown = new Set<CellId>([cell.id, ...needsOf(cell)]);
  const isAbout = (other: Cell): other is GuessCell =>
    other.kind === 'guess' && other.hides && other.pours.some((pour) => shown.has(pour));
  return book.cells.filter(isAbout);
}

function guessesOfNote(book: Pick<Book, 'cells'>, { after }: NoteCell): GuessCell[] {
  const guess = book.cells.find((cell) => cell.kind === 'guess' && cell.id === after);
  return guess?.kind === 'guess' ? [guess, ...guessesToldBy(book, guess)] : [];
}

/** Those of them that are still to be given and keep the cell or its result hidden; none when it may be seen. */
export const guessesHiding = (book: Pick<Book, 'cells'>, cell: Cell): GuessCell[] =>
  guessesAbout(book, cell).filter(({ given }) => !given);

/** The first of them; null when the result may be seen. */
export const guessHiding = (book: Pick<Book, 'cells'>, cell: Cell): GuessCell | null =>
  guessesHiding(book, cell)[0] ?? null;

/**
 * The other guesses that the answer of this one would answer too, given or not: those that hide, that ask about one of its
 * pours, and whose answer shows the same of it (`toldBy`). Its answer is shown once all of them are given.
 */
export function guessesToldBy(book: Pick<Book, 'cells'>, guess: GuessCell): GuessCell[] {
  const told = toldBy(guess.ask);
  const isTold = (other: Cell): other is GuessCell =>
    other.kind === 'guess' &&
    other.id !== guess.id &&
    other.hides &&
    told !== null &&
    toldBy(other.ask) === told &&
    other.pours.some((pour) => guess.pours.includes(pour));
  return book.cells.filter(isTold);
}

/** Those of them that are still to be given: till then the answer of this guess waits. */
export const answerWaitsFor = (book: Pick<Book, 'cells'>, guess: GuessCell): GuessCell[] =>
  guessesToldBy(book, guess).filter(({ given }) => !given);

const SHOWS_RESULTS: ReadonlySet<string> = new Set([
  'pour',
  'compare',
  'study',
  'castings',
  'card',
  'shop card',
]);

/** The guesses that hide, given or not, about a pour that takes this section or charge: what is read off it would answer them. */
export function guessesOver(book: Pick<Book, 'cells'>, part: CellId): GuessCell[] {
  const takes = (id: CellId): boolean =>
    book.cells.some(
      (cell) => cell.id === id && cell.kind === 'pour' && (cell.section === part || cell.charge === part),
    );
  const asks = (cell: Cell): cell is GuessCell =>
    cell.kind === 'guess' && cell.hides && cell.pours.some(takes);
  return book.cells.filter(asks);
}

/** Those of them still to be given. */
export const guessesAwaited = (book: Pick<Book, 'cells'>, part: CellId): GuessCell[] =>
  guessesOver(book, part).filter(({ given }) => !given);
