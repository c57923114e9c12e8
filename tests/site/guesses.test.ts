import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book, Cell, GuessCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { isFirefox } from './helpers/launch';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openBook = useOnePage();
const PATIENCE = { timeout: 60_000 };
const OWN = { answers: ['Air', 'The coat'], right: 0, reason: '' };

/** A book with these guesses in front, its pours soon done. */
function asking(guesses: readonly Partial<GuessCell>[]): Book {
  const book = sampleBook();
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
  const cells = book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  const made = guesses.map((part) => ({ ...(newCell('guess', book) as GuessCell), ...part }));
  return made.reduceRight<Book>((full, guess) => addCell(full, guess, 0), { ...book, cells });
}

test('an answer that would give another guess away waits until that one is given too', PATIENCE, async () => {
  const page = await openBook(
    writeBook(
      asking([
        { id: 'call', name: 'Under or over', ask: 'speed call', pours: ['pour-1'] },
        { id: 'fastest', name: 'Which is fastest', ask: 'quickest', pours: ['pour-1', 'pour-2'] },
      ]),
    ),
  );
  const [call, fastest, pour] = [page.locator('#call'), page.locator('#fastest'), page.locator('#pour-1')];
  await expect.poll(() => pour.getAttribute('data-state'), PATIENCE).toBe('hidden');
  const states = () =>
    page
      .getByRole('navigation', { name: 'Contents' })
      .locator('a')
      .evaluateAll((rows) => rows.map((row) => row.querySelector('.under')!.lastElementChild!.textContent));
  // The contents tell what is still to be guessed, and what that hides.
  const openAndHidden = (await states()).filter((text) => text === 'guess open' || text === 'hidden');
  expect(openAndHidden).toEqual(expect.arrayContaining(['hidden', 'guess open', 'guess open']));
  await picture(page, 'guesses-open');
  await call.getByRole('radio', { name: 'stays under critical speed' }).check();
  await call.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await expect.poll(async () => (await states()).filter((text) => text === 'guess open').length).toBe(1);
  await call.getByText('Its answer would give away another.').waitFor();
  expect(await call.getByRole('link', { name: 'Which is fastest' }).count()).toBe(1);
  expect(await call.textContent()).not.toMatch(/m\/s|computed\./i);
  expect(await pour.textContent()).toContain('The result is hidden.');
  await call.getByText('You chose “stays under critical speed”.').waitFor();
  await picture(page, 'guess-waits');
  expect(await seriousBarriers(page)).toEqual([]);

  await fastest.getByRole('radio', { name: 'the fastest two are alike' }).check();
  await fastest.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await expect.poll(() => call.textContent(), PATIENCE).toMatch(/s computed\..*The front reaches .* m\/s/s);
  await expect.poll(() => fastest.textContent(), PATIENCE).toContain('As computed.');
  await expect.poll(() => pour.locator('[data-verdict]').count(), PATIENCE).toBe(1);
});

test(
  'whether a charge spills waits for the guess about its pour, and is told once that is given',
  PATIENCE,
  async () => {
    const book = asking([{ id: 'fills', name: 'Does it fill', ask: 'filling', pours: ['pour-1'] }]);
    const cells = book.cells.map((cell) =>
      cell.kind === 'charge' ? { ...cell, charge: { by: 'mass', mass: 1.3 } as const } : cell,
    );
    const page = await openBook(writeBook({ ...book, cells }));
    const [guess, charge] = [page.locator('#fills'), page.locator('[data-kind="charge"]')];
    await charge.getByText('Whether this charge spills is hidden.').waitFor();
    expect(await charge.getByRole('link', { name: 'Does it fill' }).count()).toBe(1);
    expect(await charge.textContent()).not.toMatch(/over a rim|not spilled/);
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await charge.scrollIntoViewIfNeeded();
      await picture(page, `charge-under-guess-${width}`);
    }
    await guess.getByRole('radio').first().check();
    await guess.getByRole('button', { name: 'Give the guess and see the result' }).click();
    await charge.getByText(/cm³ of this charge spill over a rim/).waitFor(PATIENCE);
    expect(await charge.textContent()).not.toContain('is hidden');
  },
);

test(
  'a guess below its pour stays where it is in the window as the pour unfolds, and keeps the focus',
  PATIENCE,
  async () => {
    const book = sampleBook();
    const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
    const cells = book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
    const made = { ...(newCell('guess', book) as GuessCell), id: 'below', ask: 'speed call' as const };
    // Below it the page goes on: at its very end it could not be scrolled as far as a guess gets shorter.
    const text = Array.from({ length: 40 }, (_, k) => `Line ${k}.`).join('\n\n');
    const after = { ...newCell('note', book), id: 'after', text } as Cell;
    const asked = addCell({ ...book, cells }, { ...made, pours: ['pour-1'] });
    const page = await openBook(writeBook(addCell(asked, after)));
    const [guess, pour] = [page.locator('#below'), page.locator('#pour-1')];
    await expect.poll(() => pour.getAttribute('data-state'), PATIENCE).toBe('hidden');
    await waitUntilFresh(page);
    await guess.getByRole('radio', { name: 'stays under critical speed' }).check();
    const give = guess.getByRole('button', { name: 'Give the guess and see the result' });
    await give.scrollIntoViewIfNeeded();
    // Its head well within the window: one at the very edge is moved in by as much as it takes to be seen.
    await guess.evaluate((cell) =>
      scrollBy({ top: cell.getBoundingClientRect().top - 200, behavior: 'instant' }),
    );
    const place = () => guess.evaluate((cell) => cell.getBoundingClientRect().top);
    const hidden = await pour.evaluate((cell) => cell.getBoundingClientRect().height);
    const before = await place();
    await give.click();
    // The pour unfolds above it, by far more than the window.
    const height = () => pour.evaluate((cell) => cell.getBoundingClientRect().height);
    await expect.poll(height, PATIENCE).toBeGreaterThan(hidden + 1000);
    await guess
      .getByText(/computed\./)
      .first()
      .waitFor();
    await page.waitForTimeout(1500);
    expect(Math.abs((await place()) - before)).toBeLessThan(40);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'your guess and its answer',
    );
  },
);

test("a teacher writes answers of their own, and they are told as the teacher's", PATIENCE, async () => {
  const page = await openBook(writeBook(asking([{ id: 'own', name: 'Why a skin', pours: [] }])));
  const guess = page.locator('#own');
  const question = guess.getByRole('textbox', { name: 'question' });
  expect(await question.inputValue()).toContain('Draw it before you look.');
  await guess.getByRole('combobox', { name: 'answered by' }).selectOption({ label: 'answers of your own' });
  // Nothing is drawn any more: the words the cell began with go with how it is answered.
  await expect.poll(() => question.inputValue()).toBe('Which of these is right? Choose before you look.');
  expect(await guess.getByText(/Draw it/).count()).toBe(0);
  await question.fill('Why does metal have a skin?');
  await guess
    .getByRole('combobox', { name: 'answered by' })
    .selectOption({ label: 'how the metal comes in' });
  await guess.getByRole('combobox', { name: 'answered by' }).selectOption({ label: 'answers of your own' });
  expect(await question.inputValue()).toBe('Why does metal have a skin?');
  // Untouched, they lack one thing; begun, each field is told.
  await guess.getByText('The teacher has written no answers.').waitFor();
  expect(await guess.getByText('Answer 1 is empty.').count()).toBe(0);
  await guess.getByRole('textbox', { name: 'answer 1', exact: true }).fill('It is cold');
  await guess.getByText('Answer 2 is empty.').waitFor();
  await guess.getByRole('textbox', { name: 'answer 2', exact: true }).fill('Air makes oxide');
  await guess.getByRole('button', { name: 'Add an answer' }).click();
  await guess.getByRole('textbox', { name: 'answer 3', exact: true }).fill('The coat');
  await guess.getByText('No answer is marked as right.').waitFor();
  await guess.getByRole('radio', { name: 'answer 3 is right' }).check();
  await guess.getByRole('radio', { name: 'answer 2 is right' }).check();
  await guess.getByRole('textbox', { name: /^why it is right/ }).fill('Within moments, 1 mm or not.');
  await guess.getByRole('button', { name: 'Take out answer 1' }).click();
  // The mark goes with its answer.
  expect(await guess.getByRole('radio', { name: 'answer 1 is right' }).isChecked()).toBe(true);
  await guess.getByText('The answer is the teacher’s, and not computed.').waitFor();
  await picture(page, 'own-answers');
  expect(await seriousBarriers(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 900 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await picture(page, 'own-answers-phone');
  await page.setViewportSize({ width: 1440, height: 900 });

  // Locked, the right one is out of sight until the guess is given.
  await guess.getByRole('button', { name: 'Lock the question and what it rests on' }).click();
  await guess.getByText('Which is right, and why, is shown here once the guess is given').waitFor();
  expect(await guess.getByRole('radio', { name: / is right$/ }).count()).toBe(0);
  expect(await guess.getByRole('textbox', { name: /^why it is right/ }).count()).toBe(0);

  await guess.getByRole('radio', { name: 'The coat' }).check();
  await guess.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await expect.poll(() => guess.textContent()).toContain('Not as the teacher says.');
  expect(await guess.textContent()).toContain(
    "You chose “The coat”; the teacher's answer is “Air makes oxide”.",
  );
  expect(await guess.textContent()).toContain("The teacher's answer, not computed.");
  expect(await guess.textContent()).toContain('Within moments, 1 mm or not.');
  await picture(page, 'own-answers-given');
});

test(
  'a note tied to a guess is shown once the guess is given, and says till then what it waits for',
  PATIENCE,
  async () => {
    const book = asking([{ id: 'own', name: 'Why a skin', pours: [], ask: 'own answers', own: OWN }]);
    const text = 'Air makes oxide within moments.';
    const cells = book.cells.map((cell): Cell => (cell.kind === 'note' ? { ...cell, text } : cell));
    const page = await openBook(writeBook({ ...book, cells }));
    const note = page.locator('[data-kind="note"]').first();
    const [words, hidden] = [note.getByText(text), note.getByText('The note is hidden.')];
    await words.waitFor();
    await note.getByRole('button', { name: /^Edit/ }).click();
    await note.getByRole('combobox', { name: 'shown' }).selectOption({ label: 'once “Why a skin” is given' });
    await note.getByRole('button', { name: 'Done' }).click();
    await hidden.waitFor();
    expect(await words.count()).toBe(0);
    expect(await note.getByRole('link', { name: 'Why a skin' }).count()).toBe(1);
    await picture(page, 'note-hidden');
    expect(await seriousBarriers(page)).toEqual([]);
    // On paper it says that it is hidden, and no more.
    await page.emulateMedia({ media: 'print' });
    expect(await hidden.isVisible()).toBe(true);
    // Paper cannot be shown on Firefox's screen.
    if (!isFirefox) expect(await note.getByRole('button', { name: /edit/i }).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    // The teacher can still get at it, as long as it is not locked.
    await note.getByRole('button', { name: /^For the teacher: edit/ }).click();
    await note.getByRole('textbox', { name: /^Text;/ }).waitFor();
    await note.getByRole('button', { name: 'Done' }).click();

    const guess = page.locator('#own');
    await guess.getByText('For the teacher: what is asked').click();
    await guess.getByRole('button', { name: 'Lock the question and what it rests on' }).click();
    expect(await note.getByRole('button', { name: /^For the teacher: edit/ }).isDisabled()).toBe(true);
    await guess.getByRole('radio', { name: 'Air' }).check();
    await guess.getByRole('button', { name: 'Give the guess and see the result' }).click();
    await words.waitFor();
    expect(await hidden.count()).toBe(0);
    await guess.getByRole('button', { name: 'Guess again' }).click();
    await hidden.waitFor();
  },
);
