import { inflateSync } from 'node:zlib';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book, Cell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { firstOf, sampleBook } from '../book/sample';
import { longestBook } from '../report/card/longestBook';
import { waitUntilFresh } from './helpers/bench';
import { isFirefox } from './helpers/launch';
import { useOnePage } from './helpers/onePage';

const openBook = useOnePage();

/** Pours on a coarse mesh, so that they take a moment only. */
const quick = (book: Book): Book => ({
  ...book,
  cells: book.cells.map(
    (cell): Cell =>
      cell.kind === 'pour' ? { ...cell, computation: { ...cell.computation, meshCells: 60 } } : cell,
  ),
});
/** Its id is one that a book file may have, and that no reference within a picture could hold. */
const withCard = quick(
  addCell(sampleBook(), { ...newCell('shop card', sampleBook()), id: 'card "1" <b>(of two)</b>' }),
);

async function pageWith(book: Book): Promise<Page> {
  const page = await openBook(writeBook(book));
  await waitUntilFresh(page);
  return page;
}

async function chooseUnits(page: Page, units: readonly string[]): Promise<void> {
  const names = ['Unit of length', 'Unit of mass', 'Unit of temperature'];
  for (const [index, name] of names.entries())
    await page.getByRole('combobox', { name }).selectOption(units[index]!);
}

const US = ['in', 'lb', 'degF'] as const;
const METRIC = ['mm', 'kg', 'degC'] as const;

test('units change inputs, charts, figures and the card, keep every value, and are kept', async () => {
  const page = await pageWith(withCard);
  const charge = firstOf(withCard, 'charge');
  const cell = (id: string) => page.locator(`[id="${id}"]`);
  const head = cell(charge.id).getByRole('textbox', { name: /^head above the mouth/ });
  await head.fill('1 3/8 in');
  await head.blur();
  expect(await head.inputValue()).toBe('34.925');

  await chooseUnits(page, US);
  expect(await head.inputValue()).toBe('1.375');
  expect(await cell(charge.id).locator('.v small').allTextContents()).toEqual(['lb', 'in', 'in']);
  const metal = firstOf(withCard, 'metal').id;
  expect(
    await cell(metal)
      .getByRole('textbox', { name: /^pouring temperature/ })
      .inputValue(),
  ).toBe('1319');
  await waitUntilFresh(page);
  const pour = cell(firstOf(withCard, 'pour').id);
  await pour.scrollIntoViewIfNeeded();
  await pour
    .getByText(/^front place, in from the mouth/)
    .first()
    .waitFor();
  expect(await pour.locator('[data-key="skin_folded_mm"] dd small').textContent()).toBe('in');
  const card = page.locator('.paper .shop-card');
  expect(await card.textContent()).toMatch(/charge[\d.]+lb/);
  expect(await card.textContent()).not.toMatch(/\d\)? (?:mm|kg|°C|m\/s)/);
  expect(await pour.getByText('front speed, in/s', { exact: true }).count()).toBe(1);

  await chooseUnits(page, METRIC);
  await chooseUnits(page, US);
  expect(await head.inputValue()).toBe('1.375');
  await page
    .getByText(/on this machine/)
    .first()
    .waitFor();
  await page.waitForTimeout(900);
  await page.reload();
  await page.getByRole('combobox', { name: 'Unit of length' }).waitFor();
  expect(await page.getByRole('combobox', { name: 'Unit of length' }).inputValue()).toBe('in');
  expect(await head.inputValue()).toBe('1.375');
});

/** Boxes of the pages of a PDF [points], read from the file itself. */
function pagesOf(pdf: Buffer): { readonly width: number; readonly height: number }[] {
  const text = pdf.toString('latin1');
  const streams = [...text.matchAll(/stream\r?\n/g)].map(({ index, 0: word }) => {
    try {
      return inflateSync(pdf.subarray(index + word.length), { finishFlush: 2 }).toString('latin1');
    } catch {
      return '';
    }
  });
  const boxes = [text, ...streams].flatMap((part) => [
    ...part.matchAll(/\/Type\s*\/Page\b(?!s)[\s\S]{0,600}?\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g),
  ]);
  return boxes.map(([, width, height]) => ({ width: Number(width), height: Number(height) }));
}

/** Fills of the die that give no hatch, because there is none of that name or it lies in a hidden picture. */
const unhatched = (paper: Locator): Promise<string[]> =>
  paper.evaluate((card) => {
    const isShown = (part: Element | null) => (part?.closest('svg')?.getBoundingClientRect().width ?? 0) > 0;
    const hatchOf = (fill: string) => document.getElementById(/^url\(#([^\s)]+)\)$/.exec(fill)?.[1] ?? '');
    const fills = [...card.querySelectorAll('.steel')]
      .filter(isShown)
      .map((part) => part.getAttribute('fill') ?? 'none');
    return fills.length > 0 ? fills.filter((fill) => !isShown(hatchOf(fill))) : ['no die is shown'];
  });

/** Presses the button; a page without a window has no print dialog, so what would be printed stays to be looked at. */
async function print(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await page.getByRole('button', { name: 'Print this card' }).click();
  await page.emulateMedia({ media: 'print' });
}

// Firefox's protocol cannot show a page as it is printed.
test.skipIf(isFirefox).each([
  // ISO 216, and ANSI Y14.1 for A size [mm].
  ['A4', { length: 'mm', mass: 'kg', temperature: 'degC' }, 210, 297],
  ['US letter', { length: 'in', mass: 'lb', temperature: 'degF' }, 215.9, 279.4],
] as const)(
  'a card with the longest content is one page of %s, and nothing of the book beside it',
  async (_, units, width, height) => {
    const page = await pageWith(quick({ ...longestBook(6, 6, 'AZ91'), units }));
    const card = page.locator('.paper .shop-card');
    await card.scrollIntoViewIfNeeded();
    // What a card can have on top of that: a warning, and metal that has waited in the basin.
    await card.evaluate((paper) => {
      paper.querySelector('.warning')?.remove();
      const warning = document.createElement('p');
      warning.className = 'warning';
      warning.textContent = 'Do not pour by this card. It is out of date: the pour has been changed since.';
      paper.querySelector('header')!.after(warning);
      const setting = paper.querySelector('.settings tr')!;
      setting.after(setting.cloneNode(true));
      // And what a study of two settings tells.
      const expected = paper.querySelector('.expected tbody')!;
      for (const line of [...expected.children].slice(0, 2)) expected.append(line.cloneNode(true));
    });
    await print(page);
    const isCut = await page
      .locator('.printed-card .shop-card')
      .evaluate((paper) =>
        [...paper.querySelectorAll('*:not(svg *)')].some(
          (part) => part.scrollWidth > part.clientWidth + 1 && part.clientWidth > 0,
        ),
      );
    expect(isCut).toBe(false);
    // Room for a hand to write a name: 35 mm on paper, however small the card is printed.
    const castBy = page.locator('.printed-card footer > div', { hasText: 'cast by' });
    expect((await castBy.boundingBox())!.width).toBeGreaterThanOrEqual((35 / 25.4) * 96);
    expect(await page.locator('[data-cell]').first().isVisible()).toBe(false);
    expect(await unhatched(page.locator('.printed-card'))).toEqual([]);

    const pages = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    expect(pages).toHaveLength(1);
    // To a point.
    expect(pages[0]!.width).toBeCloseTo((width / 25.4) * 72, -0.5);
    expect(pages[0]!.height).toBeCloseTo((height / 25.4) * 72, -0.5);
  },
);

test('a card of a pour that no longer holds says that it must not be used, and can be read on a phone', async () => {
  const page = await pageWith(withCard);
  await page.setViewportSize({ width: 390, height: 844 });
  const words = page.locator('.paper .sketch:visible text').filter({ hasText: /^mouth$/ });
  await words.first().waitFor();
  expect(await words.count()).toBe(1);
  expect((await words.boundingBox())!.height).toBeGreaterThanOrEqual(11);
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(await unhatched(page.locator('.paper'))).toEqual([]);
  const charge = page.locator(`[id="${firstOf(withCard, 'charge').id}"]`);
  const head = charge.getByRole('textbox', { name: /^head above the mouth/ });
  const warning = page.locator('.paper .warning', { hasText: 'Do not pour by this card.' });
  expect(await warning.count()).toBe(0);
  await head.fill('900');
  await head.blur();
  await warning.waitFor();
  await head.fill('30');
  await head.blur();
  await waitUntilFresh(page);
  expect(await warning.count()).toBe(0);
});
