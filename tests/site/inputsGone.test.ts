import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book, Cell, GuessCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { firstOf, sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** Inputs that were deleted, inputs that are copied, and answers that are cleared. */

const openBook = useOnePage();

const sample = sampleBook();
const coarse = (cell: Cell): Cell =>
  cell.kind === 'pour' ? { ...cell, computation: { ...cell.computation, meshCells: 40 } } : cell;
const book: Book = {
  ...sample,
  title: 'Inputs gone',
  cells: sample.cells.filter(({ kind }) => kind !== 'compare').map(coarse),
};
const [tilt, charge, pour] = [firstOf(book, 'tilt'), firstOf(book, 'charge'), firstOf(book, 'pour')];

const openMenu = async (page: Awaited<ReturnType<typeof openBook>>, name: string): Promise<void> => {
  await page.getByRole('button', { name: `More for ${name}`, exact: true }).click();
};

test('an input that was deleted is named where it is missing, and brought back, also after other changes', async () => {
  const page = await openBook(writeBook(book));
  const told = `The tilt it took, “${tilt.name}”, was deleted: bring it back, or choose another.`;
  const [atCharge, atPour] = [charge, pour].map(({ id }) => page.locator(`[id="${id}"]`));
  const remove = async () => {
    await openMenu(page, tilt.name);
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    for (const cell of [atCharge!, atPour!]) await cell.getByText(told).waitFor();
  };
  await remove();
  await picture(page, 'input-deleted');
  await atPour!.getByRole('button', { name: `Bring back “${tilt.name}”` }).click();
  await page.locator(`[id="${tilt.id}"]`).waitFor();
  await expect.poll(() => page.getByText(told).count()).toBe(0);

  await remove();
  const title = page.getByRole('textbox', { name: 'Title of the book' });
  await title.fill('Renamed since');
  await title.blur();
  await atCharge!.getByRole('button', { name: `Bring back “${tilt.name}”` }).click();
  await page.locator(`[id="${tilt.id}"]`).waitFor();
  await expect.poll(() => page.getByText(told).count()).toBe(0);
  expect(await title.inputValue()).toBe('Renamed since');
  for (const cell of [atCharge!, atPour!])
    expect(
      await cell
        .getByRole('combobox', { name: /start and end of|^tilt$/ })
        .first()
        .inputValue(),
    ).toBe(tilt.id);
});

test('a pour that was deleted is named by the study, the guess and the comparison that took it, and comes back to all', async () => {
  const compare = firstOf(sample, 'compare');
  const two = addCell(book, { ...pour, id: 'second', name: 'Second' });
  const guess = { ...(newCell('guess', two) as GuessCell), id: 'asked', pours: [pour.id], given: true };
  const study = { ...newCell('study', two), id: 'varied', pour: pour.id } as Cell;
  const takers = [{ ...compare, id: 'beside', pours: [pour.id, 'second'] }, guess, study];
  const page = await openBook(writeBook(takers.reduce((whole, cell) => addCell(whole, cell as Cell), two)));
  const told = `The pour it took, “${pour.name}”, was deleted: bring it back, or choose another.`;
  await openMenu(page, pour.name);
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
  for (const id of ['beside', 'asked', 'varied']) await page.locator(`#${id}`).getByText(told).waitFor();
  await picture(page, 'pour-deleted');
  const title = page.getByRole('textbox', { name: 'Title of the book' });
  await title.fill('Renamed since');
  await title.blur();
  await page
    .locator('#asked')
    .getByRole('button', { name: `Bring back “${pour.name}”` })
    .click();
  await page.locator(`[id="${pour.id}"]`).waitFor();
  await expect.poll(() => page.getByText(told).count()).toBe(0);
});

test('a pour is duplicated with its tilt and charge beside the plain duplicate, which says what it shares; undone at once', async () => {
  const page = await openBook(writeBook(book));
  const count = () => page.locator('[data-cell]').count();
  await openMenu(page, pour.name);
  const plain = page.getByRole('button', { name: /^Duplicate shares .* changing one changes both$/ });
  await plain.waitFor();
  await picture(page, 'duplicate-menu');
  await page.getByRole('button', { name: /^Duplicate with its tilt and charge/ }).click();
  await expect.poll(count).toBe(book.cells.length + 3);
  const named = (name: string) =>
    page
      .getByRole('textbox', { name: /^Name of/ })
      .and(page.locator(`[id^="name-"]`))
      .evaluateAll(
        (fields, wanted) => fields.filter((field) => (field as HTMLInputElement).value === wanted).length,
        name,
      );
  for (const { name } of [tilt, charge, pour]) await expect.poll(() => named(`${name} copy`)).toBe(1);
  const start = page.locator('[data-kind="tilt"]').nth(1).getByRole('textbox', { name: 'start at' });
  await start.fill('20');
  await start.blur();
  const first = page.locator(`[id="${tilt.id}"]`).getByRole('textbox', { name: 'start at' });
  expect(await first.inputValue()).not.toBe(await start.inputValue());
  const undo = page.getByRole('button', { name: /^Undo: / });
  await undo.click();
  await undo.click();
  await expect.poll(count).toBe(book.cells.length);
});

test('all guesses are cleared at one press, offered only where something was answered, and undone', async () => {
  const asked: GuessCell = {
    ...(newCell('guess', book) as GuessCell),
    ask: 'own answers',
    question: 'Which way?',
    pours: [],
    own: { answers: ['uphill', 'downhill'], right: 0, reason: 'It runs down.' },
  };
  const lesson = addCell(addCell({ ...book, cells: [] }, asked), { ...asked, id: 'guess-2', name: 'Second' });
  const page = await openBook(writeBook({ ...lesson, title: 'Lesson' }));
  const clear = page.getByRole('button', { name: 'Clear all guesses' });
  await page.getByRole('radio', { name: 'uphill' }).first().waitFor();
  expect(await clear.count()).toBe(0);
  await page.getByRole('radio', { name: 'uphill' }).first().check();
  await page.getByRole('button', { name: 'Give the guess and see the result' }).first().click();
  const again = page.getByRole('button', { name: 'Guess again' });
  await again.waitFor();
  await picture(page, 'clear-guesses');
  await clear.click();
  await expect.poll(() => again.count()).toBe(0);
  expect(await page.getByRole('radio', { name: 'uphill' }).first().isChecked()).toBe(false);
  await expect.poll(() => clear.count()).toBe(0);
  await page.getByRole('button', { name: 'Undo: all guesses cleared' }).click();
  await again.waitFor();
});
