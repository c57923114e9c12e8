import { expect, test } from 'vitest';
import { clearGuesses } from '$src/cells/clearGuesses';
import { addCell, replaceCell } from '$src/cells/edit';
import { giveGuess } from '$src/cells/giveGuess';
import { guessHiding } from '$src/cells/guessHides';
import type { Book } from '$src/cells/kinds';
import { lockBroken, lockLesson } from '$src/cells/locks';
import { newCell } from '$src/cells/newCell';
import { firstOf, sampleBook } from '../book/sample';

/** Two guesses about one pour, and a note for afterwards. */
function lesson(): Book {
  const sample = sampleBook();
  const one = addCell(sample, newCell('guess', sample));
  const two = addCell(one, { ...newCell('guess', one), id: 'guess-2', name: 'Second' });
  return addCell(two, { ...newCell('note', two), id: 'after', name: 'After', folded: true });
}

const answered = (book: Book): Book => {
  const guess = firstOf(book, 'guess');
  return giveGuess(replaceCell(book, { ...guess, picked: 'over', drawn: [0.1, 0.2] }), guess.id);
};

test('a book whose guesses are all answered is as the next class finds it', () => {
  const book = lesson();
  const given = giveGuess(answered(book), 'guess-2');
  expect(given.cells.filter((cell) => guessHiding(given, cell))).toEqual([]);
  expect(given.cells.at(-1)!.folded).toBe(false);
  expect(clearGuesses(given)).toEqual(book);
});

test('one that is half way loses the answers alone; where nothing was answered it is the same', () => {
  const book = lesson();
  const open = { ...book, cells: book.cells.with(-1, { ...book.cells.at(-1)!, folded: false }) };
  expect(clearGuesses(answered(open))).toEqual(open);
  expect(clearGuesses(book)).toBe(book);
});

test('locked guesses are cleared as well, since a lock leaves the answer open', () => {
  const book = lockLesson(lesson(), 'guess-2');
  const given = giveGuess(answered(book), 'guess-2');
  expect(lockBroken(given, clearGuesses(given))).toBeNull();
});
