import { expect, test } from 'vitest';
import { bookIssues } from '$src/book/bookIssues';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { addCell, deleteCell, moveCell, renameCell, replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import { giveGuess } from '$src/cells/giveGuess';
import { answerWaitsFor, guessesAwaited, guessesHiding, guessHiding } from '$src/cells/guessHides';
import type { Book, Cell, GuessCell } from '$src/cells/kinds';
import { lockBroken, lockLesson, setLocked } from '$src/cells/locks';
import { newCell } from '$src/cells/newCell';
import { withReferences } from '$src/cells/withReferences';
import { EMPTY_ROW } from '$src/report/castings/casting';
import { firstOf, sampleBook } from '../book/sample';

function lessonBook(): Book {
  const sample = sampleBook();
  const withGuess = addCell(sample, newCell('guess', sample));
  return addCell(withGuess, newCell('castings', withGuess));
}

const guessOf = (book: Book): GuessCell => firstOf(book, 'guess');

test('a guess hides its pour and what shows that pour, and nothing else, until it is given', () => {
  const book = lessonBook();
  const guess = guessOf(book);
  const hidden = (of: Book) => of.cells.filter((cell) => guessHiding(of, cell)).map(({ id }) => id);
  expect(hidden(book)).toEqual([guess.pours[0], 'compare-1']);
  expect(hidden(replaceCell(book, { ...guess, given: true }))).toEqual([]);
  expect(hidden(replaceCell(book, { ...guess, hides: false }))).toEqual([]);
});

test('the last guess given unfolds the notes below it, and none before', () => {
  const sample = lessonBook();
  const note = (name: string) => ({ ...newCell('note', sample), id: name, name, folded: true });
  const second = { ...guessOf(sample), id: 'guess-2', name: 'Second' };
  const book: Book = { ...sample, cells: [note('before'), ...sample.cells, second, note('after')] };
  const folded = (of: Book) => of.cells.flatMap((cell) => (cell.folded ? [cell.id] : []));
  const first = giveGuess(book, guessOf(sample).id);
  expect(folded(first)).toEqual(['before', 'after']);
  expect(folded(giveGuess(first, 'guess-2'))).toEqual(['before']);
  expect(firstOf(giveGuess(first, 'guess-2'), 'guess').given).toBe(true);
});

test('a section tells nothing of first flow while a guess about its pour is open', () => {
  const book = lessonBook();
  const guess = guessOf(book);
  expect(guessesAwaited(book, 'section-1')[0]?.id).toBe(guess.id);
  expect(guessesAwaited(replaceCell(book, { ...guess, given: true }), 'section-1')).toEqual([]);
  expect(guessesAwaited(book, 'section-9')).toEqual([]);
});

test('a castings log of a hidden pour is hidden too', () => {
  const book = lessonBook();
  const log = firstOf(book, 'castings');
  const linked = { ...log, castings: [{ ...EMPTY_ROW, pour: guessOf(book).pours[0]!, good: 3 }] };
  expect(guessHiding(replaceCell(book, linked), linked)?.id).toBe(guessOf(book).id);
});

test('a locked cell refuses changes, renaming and deletion, but moves, folds and unlocks', () => {
  const book = setLocked(sampleBook(), 'charge-1', true);
  const charge = firstOf(book, 'charge');
  const broken = (after: Book) => lockBroken(book, after)?.id ?? null;
  expect(broken(replaceCell(book, { ...charge, charge: { by: 'mass', mass: 9 } }))).toBe('charge-1');
  expect(broken(renameCell(book, 'charge-1', 'Other'))).toBe('charge-1');
  expect(broken(deleteCell(book, 'charge-1'))).toBe('charge-1');
  expect(broken(moveCell(book, 'charge-1', -1))).toBeNull();
  expect(broken(replaceCell(book, { ...charge, folded: true }))).toBeNull();
  expect(broken(setLocked(book, 'charge-1', false))).toBeNull();
  expect(broken(renameCell(book, 'tilt-1', 'Other'))).toBeNull();
});

test('a locked comparison is still stepped through by time, inclination or filled share', () => {
  const open = sampleBook();
  const book = setLocked(open, firstOf(open, 'compare').id, true);
  const compare = firstOf(book, 'compare');
  expect(lockBroken(book, replaceCell(book, { ...compare, stepBy: 'filled share' }))).toBeNull();
  expect(lockBroken(book, replaceCell(book, { ...compare, pours: [] }))?.id).toBe(compare.id);
});

test('deleting what a locked cell rests on is refused too', () => {
  const book = setLocked(sampleBook(), 'pour-1', true);
  expect(lockBroken(book, deleteCell(book, 'section-1'))?.id).toBe('pour-1');
});

test('a locked guess still takes an answer, but no other question', () => {
  const open = lessonBook();
  const book = setLocked(open, guessOf(open).id, true);
  const guess = guessOf(book);
  const broken = (part: Partial<GuessCell>) => lockBroken(book, replaceCell(book, { ...guess, ...part }));
  expect(broken({ drawn: [0.2, 0.3], given: true })).toBeNull();
  expect(broken({ ask: 'filling' })?.id).toBe(guess.id);
  expect(broken({ hides: false })?.id).toBe(guess.id);
});

test('a lesson is locked down to the section it rests on', () => {
  const book = lessonBook();
  const locked = lockLesson(book, guessOf(book).id)
    .cells.filter((cell) => cell.locked)
    .map(({ kind }) => kind);
  expect(locked.sort()).toEqual(['charge', 'guess', 'metal', 'pour', 'section', 'tilt']);
});

test('locks, guesses and castings are kept in the book file', () => {
  const book = lockLesson(lessonBook(), 'guess-1');
  const answered = replaceCell(book, { ...guessOf(book), drawn: [0.1, 0.25], given: true });
  const log = firstOf(answered, 'castings');
  const full = replaceCell(answered, {
    ...log,
    castings: [{ ...EMPTY_ROW, date: '3 May', pour: 'pour-1', tiltTime: 6.5, good: 4 }],
  });
  expect(readBook(writeBook(full))).toEqual({ book: full });
});

test('wrong rows of a log are named with their place', () => {
  const book = lessonBook();
  const log = firstOf(book, 'castings');
  const rows = [
    { ...EMPTY_ROW, good: 3 },
    { ...EMPTY_ROW, good: 1.5, pour: 'gone' },
    { ...EMPTY_ROW },
    { ...EMPTY_ROW, good: 2, mass: -1 },
  ];
  const issues = bookIssues(replaceCell(book, { ...log, castings: rows }));
  expect(issues.map(({ path }) => path.replace(/^book\.cells\.\d+\./, ''))).toEqual([
    'castings.1.pour',
    'castings.1.good',
    'castings.3.mass',
  ]);
});

test('a deleted pour leaves the rows it had, without a pour', () => {
  const book = lessonBook();
  const log = firstOf(book, 'castings');
  const linked = replaceCell(book, { ...log, castings: [{ ...EMPTY_ROW, pour: 'pour-1', good: 3 }] });
  const left = deleteCell(linked, 'pour-1');
  expect(firstOf(left, 'castings').castings[0]!.pour).toBeNull();
  expect(evaluateBook(left).get(log.id)?.state).toBe('ready');
});

test('to choose the quickest takes two pours', () => {
  const book = lessonBook();
  const one = replaceCell(book, { ...guessOf(book), ask: 'quickest' });
  expect(evaluateBook(one).get('guess-1')?.state).toBe('wrong input');
  const two = replaceCell(book, { ...guessOf(book), ask: 'quickest', pours: ['pour-1', 'pour-2'] });
  expect(evaluateBook(two).get('guess-1')?.state).toBe('ready');
});

const own = { answers: ['The skin', 'The coat'], right: 1, reason: 'It insulates.' };
const fileWith = (part: object): string => {
  const book = lessonBook();
  const file = JSON.parse(writeBook(book));
  const index = book.cells.findIndex(({ kind }) => kind === 'guess');
  Object.assign(file.book.cells[index], part);
  return JSON.stringify(file);
};

test("a teacher's own answers are kept in the book, need no pour, and hide the pours they are about", () => {
  const read = readBook(fileWith({ ask: 'own answers', own, pours: [] }));
  if ('issues' in read) throw new Error(JSON.stringify(read.issues));
  expect(guessOf(read.book).own).toEqual(own);
  expect(readBook(writeBook(read.book))).toEqual(read);
  expect(evaluateBook(read.book).get('guess-1')?.state).toBe('ready');
  const about = replaceCell(read.book, { ...guessOf(read.book), pours: ['pour-1'] });
  expect(hiddenBy(about, 'pour-1')).toEqual(['guess-1']);
});

test("a book file with wrong answers of a teacher's is refused or told with field, and what to do", () => {
  const refused = (part: object) => {
    const read = readBook(fileWith(part));
    return 'issues' in read
      ? read.issues.map(({ path, remedy }) => [path.replace(/^.*?own/, 'own'), remedy])
      : [];
  };
  expect(refused({ own: { ...own, answers: ['a', 'b', 'c', 'd', 'e', 'f'] } })).toEqual([
    ['own.answers', 'Give at most 5 of them.'],
  ]);
  expect(refused({ own: { ...own, right: 'The coat' } })).toEqual([['own.right', 'Give a number.']]);
  expect(refused({ own: { ...own, hint: '' } })).toEqual([
    ['own.hint', 'Take it out, or check its spelling.'],
  ]);
  const read = readBook(fileWith({ ask: 'own answers', own: { ...own, right: 5 } }));
  if ('issues' in read) throw new Error(JSON.stringify(read.issues));
  const [issue] = bookIssues(read.book);
  expect(issue!.path).toMatch(/^book\.cells\.\d+\.own\.right$/);
  expect(issue!.remedy).toBe('Mark one of the answers that are there.');
});

/** Three guesses about the first pour, one of which asks about the second as well. */
function askedThrice(part: Partial<GuessCell> = {}): Book {
  const book = sampleBook();
  const guess = (id: string, ask: GuessCell['ask'], pours: readonly string[]): GuessCell => ({
    ...(newCell('guess', book) as GuessCell),
    id,
    name: id,
    ask,
    pours,
    ...(id === 'call' ? part : {}),
  });
  return [
    guess('call', 'speed call', ['pour-1']),
    guess('fastest', 'quickest', ['pour-1', 'pour-2']),
    guess('comes in', 'first flow', ['pour-1']),
  ].reduce<Book>(addCell, book);
}
const waitsFor = (book: Book, id: string): string[] =>
  answerWaitsFor(book, book.cells.find((cell) => cell.id === id) as GuessCell).map((guess) => guess.id);
const hiddenBy = (book: Book, id: string): string[] =>
  guessesHiding(book, book.cells.find((cell) => cell.id === id)!).map((guess) => guess.id);

test('a pour opens with the last guess about it, and an answer waits for those that it would give away', () => {
  const open = askedThrice();
  expect(waitsFor(open, 'call')).toEqual(['fastest']);
  expect(waitsFor(open, 'fastest')).toEqual(['call']);
  // How the metal comes in says nothing of a speed.
  expect(waitsFor(open, 'comes in')).toEqual([]);
  const one = giveGuess(open, 'call');
  expect(waitsFor(one, 'call')).toEqual(['fastest']);
  expect(hiddenBy(one, 'pour-1')).toEqual(['fastest', 'comes in']);
  const two = giveGuess(one, 'fastest');
  expect(waitsFor(two, 'call')).toEqual([]);
  expect(waitsFor(two, 'fastest')).toEqual([]);
  expect(hiddenBy(two, 'pour-1')).toEqual(['comes in']);
  expect(hiddenBy(two, 'pour-2')).toEqual([]);
  expect(hiddenBy(giveGuess(two, 'comes in'), 'pour-1')).toEqual([]);
});

test('a guess that hides nothing holds no other answer back', () => {
  expect(waitsFor(askedThrice({ hides: false }), 'fastest')).toEqual([]);
});

/** The lesson with a folded note tied to its guess, and to no other cell. */
function withTiedNote(book: Book, after: string): Book {
  const note = { ...newCell('note', book), id: 'tied', name: 'Why', folded: true, after } as Cell;
  return addCell(book, note, 0);
}
const tied = (book: Book) =>
  firstOf({ ...book, cells: book.cells.filter(({ id }) => id === 'tied') }, 'note');

test('a note tied to a guess is hidden until that is given, whether it hides pours or not, and unfolds then', () => {
  for (const hides of [true, false]) {
    const lesson = lessonBook();
    const book = withTiedNote(replaceCell(lesson, { ...guessOf(lesson), hides }), 'guess-1');
    expect(hiddenBy(book, 'tied')).toEqual(['guess-1']);
    expect(hiddenBy(book, 'note-1')).toEqual([]);
    const given = giveGuess(book, 'guess-1');
    expect(hiddenBy(given, 'tied')).toEqual([]);
    expect(tied(given).folded).toBe(false);
  }
});

test('a note waits as long as the answer of its guess does', () => {
  const book = withTiedNote(askedThrice(), 'call');
  const one = giveGuess(book, 'call');
  expect(hiddenBy(one, 'tied')).toEqual(['fastest']);
  expect(tied(one).folded).toBe(true);
  const two = giveGuess(one, 'fastest');
  expect(hiddenBy(two, 'tied')).toEqual([]);
  expect(tied(two).folded).toBe(false);
});

test('the tie of a note is kept in the file, locked with its guess, and goes with a guess that is taken out', () => {
  const book = withTiedNote(lessonBook(), 'guess-1');
  expect(readBook(writeBook(book))).toEqual({ book });
  expect(lockLesson(book, 'guess-1').cells.find(({ id }) => id === 'tied')?.locked).toBe(true);
  const left = deleteCell(book, 'guess-1');
  expect(tied(left)).not.toHaveProperty('after');
  expect(withReferences(tied(book), () => 'guess-7')).toMatchObject({ after: 'guess-7' });
  expect(withReferences(tied(book), () => null)).not.toHaveProperty('after');
});

test('a note that waits for no guess of the book is told with its field, and shown', () => {
  for (const after of ['gone', 'pour-1']) {
    const book = withTiedNote(lessonBook(), after);
    expect(hiddenBy(book, 'tied')).toEqual([]);
    expect(bookIssues(book).map(({ path, remedy }) => [path, remedy])).toEqual([
      ['book.cells.0.after', 'Choose another guess, or let the note be shown at once.'],
    ]);
  }
});
