import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, CellKind } from '$src/cells/kinds';
import { firstOf, sampleBook } from '../book/sample';
import { openBookFile } from './helpers/books';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** What can be taken back, and what the page then shows. */

const openBook = useOnePage();

const sample = sampleBook();
const only = (kinds: readonly CellKind[]): Book => ({
  ...sample,
  cells: sample.cells.filter(({ kind }) => kinds.includes(kind)),
});
/** Nothing is poured. */
const drawn = only(['note', 'section', 'metal', 'tilt', 'charge']);
const { title } = drawn;

const titleOf = (page: Page) => page.getByRole('textbox', { name: 'Title of the book' });
const count = (page: Page) => page.locator('[data-cell]').count();
const focused = (page: Page) => page.evaluate(() => document.activeElement?.id);
const told = (page: Page) => page.locator('p[aria-hidden="true"]', { hasText: /^(undone|done again): / });
const undo = (page: Page) => page.keyboard.press('ControlOrMeta+z');
const redo = (page: Page) => page.keyboard.press('ControlOrMeta+y');

async function openDrawn(): Promise<Page> {
  const page = await openBook(writeBook(drawn));
  await expect.poll(() => count(page)).toBe(drawn.cells.length);
  await page.getByRole('region', { name: 'Add a cell' }).waitFor();
  // Beyond what is drawn, the page has fetched what the keys do.
  await page.waitForLoadState('networkidle');
  return page;
}

test('right after a cell is added or deleted, Ctrl Z takes that back and leaves the title alone', async () => {
  const page = await openDrawn();
  // Typed before, so that the browser has something of its own to take back.
  await titleOf(page).pressSequentially(', typed');
  const typed = await titleOf(page).inputValue();
  await page.getByRole('button', { name: /^tilt/ }).last().click();
  await expect.poll(() => count(page)).toBe(drawn.cells.length + 1);
  await expect.poll(() => focused(page)).toMatch(/^name-/);
  await undo(page);
  await expect.poll(() => count(page)).toBe(drawn.cells.length);
  await told(page)
    .filter({ hasText: /added$/ })
    .waitFor();
  await picture(page, 'undone-added');
  expect(await titleOf(page).inputValue()).toBe(typed);
  await expect.poll(() => focused(page)).toBe(`name-${firstOf(drawn, 'charge').id}`);

  const { id, name } = firstOf(drawn, 'section');
  await page.getByRole('button', { name: `More for ${name}` }).click();
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
  await expect.poll(() => page.locator(`[id="${id}"]`).count()).toBe(0);
  await expect.poll(() => focused(page)).toMatch(/^name-/);
  await undo(page);
  await page.locator(`[id="${id}"] svg.drawing`).first().waitFor();
  expect(await titleOf(page).inputValue()).toBe(typed);
  await redo(page);
  await expect.poll(() => page.locator(`[id="${id}"]`).count()).toBe(0);
  await told(page)
    .filter({ hasText: /^done again: .* deleted$/ })
    .waitFor();
  await undo(page);
  await page.locator(`[id="${id}"]`).waitFor();
  await undo(page);
  await expect.poll(() => titleOf(page).inputValue()).toBe(title);
});

test('what is typed into a field is taken back there first, then what was done to the book before', async () => {
  const page = await openDrawn();
  const note = firstOf(drawn, 'note');
  await page.getByRole('button', { name: `More for ${note.name}` }).click();
  await page.getByRole('button', { name: /^Duplicate/ }).click();
  await expect.poll(() => count(page)).toBe(drawn.cells.length + 1);
  await expect.poll(() => focused(page)).toMatch(/^name-/);
  const copy = page
    .locator('[data-cell]')
    .nth(1)
    .getByRole('textbox', { name: /^Name of/ });
  // Its name is chosen whole: what is typed takes its place.
  await page.keyboard.type('Q');
  expect(await copy.inputValue()).toBe('Q');
  await undo(page);
  await expect.poll(() => copy.inputValue()).toBe(`${note.name} copy`);
  expect(await count(page)).toBe(drawn.cells.length + 1);
  await undo(page);
  await expect.poll(() => count(page)).toBe(drawn.cells.length);
});

test('an undo of a level that was moved in the drawing stays at the drawing', async () => {
  const page = await openDrawn();
  const head = page.locator('[data-kind="charge"]').getByRole('textbox', { name: /^head above the mouth/ });
  const before = await head.inputValue();
  const level = page.locator('[data-kind="section"]').getByRole('slider', { name: /^charge level/ });
  await level.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await level.boundingBox())!;
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + width / 2, y + height / 2 + 12, { steps: 4 });
  await page.mouse.up();
  await expect.poll(() => head.inputValue()).not.toBe(before);
  const there = await page.evaluate(() => scrollY);
  await undo(page);
  await expect.poll(() => head.inputValue()).toBe(before);
  expect(await page.evaluate(() => scrollY)).toBe(there);
});

test('an undo goes to the cell that it changes where that is out of sight, and stays where it is seen', async () => {
  const page = await openDrawn();
  const charge = page.locator('[data-kind="charge"]');
  const head = charge.getByRole('textbox', { name: /^head above the mouth/ });
  const before = await head.inputValue();
  await head.fill('7');
  await head.press('Enter');
  // Typing does not bring a field into view in every browser.
  await head.scrollIntoViewIfNeeded();
  const at = () => page.evaluate(() => scrollY);
  const there = await at();
  await undo(page);
  await expect.poll(() => head.inputValue()).toBe(before);
  expect(await at()).toBe(there);
  await redo(page);
  await expect.poll(() => head.inputValue()).not.toBe(before);
  await head.blur();
  await page.evaluate(() => scrollTo(0, 0));
  await page
    .getByRole('button', { name: /^Undo: / })
    .first()
    .click();
  await expect.poll(() => head.inputValue()).toBe(before);
  await expect
    .poll(async () => {
      const box = (await charge.boundingBox())!;
      return box.y < 900 && box.y + box.height > 0;
    })
    .toBe(true);
  await told(page).waitFor();
  await picture(page, 'undone-elsewhere');
});

test('what was done to a book can be taken back after another was open meanwhile', async () => {
  const page = await openDrawn();
  await titleOf(page).fill('Book of before');
  await titleOf(page).blur();
  await openBookFile(page, { name: 'other.pourbook.json', text: writeBook({ ...drawn, title: 'Another' }) });
  await expect.poll(() => titleOf(page).inputValue()).toBe('Another');
  expect(await page.getByRole('button', { name: 'Undo', exact: true }).first().isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Books on this machine' }).first().click();
  await page
    .getByRole('dialog', { name: 'Books on this machine' })
    .getByRole('button', { name: 'Open Book of before' })
    .click();
  await expect.poll(() => titleOf(page).inputValue()).toBe('Book of before');
  await page.getByRole('button', { name: 'Undo: Book title changed' }).first().click();
  await expect.poll(() => titleOf(page).inputValue()).toBe(title);
});

test('Escape takes back what is being typed, and not what was given with Enter', async () => {
  const page = await openDrawn();
  const field = page.locator('[data-kind="tilt"]').first().getByRole('textbox', { name: 'start at' });
  const before = await field.inputValue();
  await field.fill('12');
  await field.press('Escape');
  await expect.poll(() => field.inputValue()).toBe(before);
  await field.fill('12');
  await field.press('Enter');
  await field.press('Escape');
  expect(Number(await field.inputValue())).toBe(12);
  await undo(page);
  await expect.poll(() => field.inputValue()).toBe(before);
});
