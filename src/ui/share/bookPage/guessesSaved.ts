import type { Book, GuessCell } from '$src/cells/kinds';
import { listText } from '$src/report/wording';
import { GUESSES_IN_PAGE } from './guessWords';

/** What becomes of the guesses of a book once its page is saved, with the guesses that have no result in it; empty for a book without guesses. */
export function guessesSaved(
  { cells }: Pick<Book, 'cells'>,
  isComputed: (guess: GuessCell) => boolean,
): string {
  const guesses = cells.filter((cell) => cell.kind === 'guess');
  if (guesses.length === 0) return '';
  const missing = guesses.filter((guess) => !isComputed(guess)).map(({ name }) => name);
  if (missing.length === 0) return GUESSES_IN_PAGE;
  return `${GUESSES_IN_PAGE} Not computed yet, so without a result in it: ${listText(missing)}.`;
}
