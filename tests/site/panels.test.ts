import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book, CellKind, TiltCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import type { Tilt } from '$src/core/tilt/tilt';
import { asKind } from '$src/ui/tilt/tiltEdits';
import { firstOf, sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { onePour } from './helpers/sampleFile';

const openBook = useOnePage();
const TILTS: readonly Tilt['kind'][] = ['staged', 'machine', 'drawn', 'measured', 'front-led'];
/** Weights, cylinder, valve, bearing and the settings for a wanted time; beside them each tilt has its limits. */
const MACHINE_PANELS = 5;
/** Those of metal, pour and study. */
const OTHERS = 3;
/** No guess: it hides what it asks about. */
const LATER: readonly CellKind[] = ['study', 'castings'];

/** A tilt of each kind that no pour takes, so that nothing is poured while numbers are typed. */
function withTilts(book: Book): Book {
  return TILTS.reduce((sum, kind) => {
    const cell = newCell('tilt', sum) as TiltCell;
    const tilt = kind === 'measured' ? { ...asKind(cell.tilt, 'drawn'), kind } : asKind(cell.tilt, kind);
    return addCell(sum, { ...cell, name: `Tilt ${kind}`, tilt: tilt as Tilt });
  }, book);
}

function coarsePour(): Book {
  const read = readBook(onePour());
  if ('issues' in read) throw new Error('The book of one pour is a book.');
  return read.book;
}

function everyKind(): string {
  const book = withTilts(coarsePour());
  return writeBook(LATER.reduce((sum, kind) => addCell(sum, newCell(kind, sum)), book));
}

/** Types a number digit by digit over what a field holds, and gives what then stands in it. */
async function typeNumber(field: Locator, digits: string): Promise<string> {
  await field.focus();
  await field.press('Control+a');
  for (const digit of digits) await field.page().keyboard.press(digit);
  const isThere = await field.evaluate((node) => node === document.activeElement);
  if (!isThere) return 'the field has lost the focus';
  await field.press('Enter');
  return field.inputValue();
}

test('no panel of any kind of cell closes while a number is typed in it, and the whole number arrives', async () => {
  const page = await openBook(everyKind());
  const panels = page.locator('[data-cell] details:has(input[inputmode="decimal"])');
  const machine = page.locator('[data-kind="tilt"]', { has: page.locator('.machine') });
  await machine.locator('.machine').waitFor({ state: 'attached' });
  // A study is drawn once it comes near the window.
  const study = page.locator('[data-kind="study"]');
  await study.scrollIntoViewIfNeeded();
  await study.getByText('What this study varies').waitFor();
  await expect.poll(() => panels.count()).toBe(OTHERS + TILTS.length + MACHINE_PANELS);
  const faults: string[] = [];
  let typed = 0;
  for (const panel of await panels.all()) {
    const summary = panel.locator('summary').first();
    const title = await summary.textContent();
    if (!(await panel.evaluate((node: HTMLDetailsElement) => node.open))) {
      await summary.focus();
      await summary.press('Enter');
    }
    for (const field of await panel.locator('input[inputmode="decimal"]').all()) {
      const name = await field.evaluate((node: HTMLInputElement) => node.labels?.[0]?.textContent);
      const shown = await typeNumber(field, '123');
      const isOpen = await panel.evaluate((node: HTMLDetailsElement) => node.open);
      if (!isOpen || !/^\+?123(\.0+)?$/.test(shown)) faults.push(`${title}, ${name}: ${shown}`);
      await page.keyboard.press('Control+z');
      typed += 1;
    }
  }
  expect(faults).toEqual([]);
  expect(typed).toBeGreaterThan(60);

  // Nor when the valve is turned while one is open.
  const weights = machine.locator('details', { hasText: 'Weights that turn' });
  await machine.locator('.valve input').fill('0.5');
  expect(await weights.evaluate((node: HTMLDetailsElement) => node.open)).toBe(true);
});

test('a panel that opened because something was missing stays open once that is chosen', async () => {
  const book = JSON.parse(onePour());
  const pour = book.book.cells.find(({ kind }: { kind: string }) => kind === 'pour');
  const tilt = pour.tilt;
  pour.tilt = null;
  const page = await openBook(JSON.stringify(book));
  const panel = page.locator('details', { hasText: 'What this pour takes' });
  const choice = panel.getByRole('combobox', { name: 'tilt' });
  await choice.selectOption(tilt);
  await expect.poll(() => choice.inputValue()).toBe(tilt);
  expect(await choice.isVisible()).toBe(true);
});

test('a guess is asked about another pour without its panel closing', async () => {
  const sample = sampleBook();
  const guess = { ...newCell('guess', sample), pours: [] };
  const page = await openBook(writeBook(addCell(sample, guess)));
  const panel = page.locator('details', { hasText: 'For the teacher' });
  const one = panel.getByLabel(firstOf(sample, 'pour').name, { exact: true });
  await one.check();
  await expect.poll(() => one.isChecked()).toBe(true);
  expect(await one.isVisible()).toBe(true);
});
