import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { firstOf, sampleBook } from '../book/sample';
import { saveBookFile } from './helpers/books';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

const openBook = useOnePage();

/** A drawing and what fills it; nothing is poured. The cavity is 150 by 20 by 30 mm. */
function drawnBook() {
  const book = sampleBook();
  const kinds = ['section', 'metal', 'tilt', 'charge'] as const;
  return writeBook({ ...book, cells: kinds.map((kind) => firstOf(book, kind)) });
}

const field = (page: Page): Locator => page.getByRole('textbox', { name: /^width of Die where it ends/ });

/** The cavity volume under the picture [cm³]. */
async function cavity(page: Page): Promise<number> {
  const shown = page.locator('[data-kind="section"]').getByText('cavity volume').locator('..');
  return Number((await shown.textContent())!.match(/[\d.]+/)![0]);
}

async function regionsOf(page: Page): Promise<readonly object[]> {
  const { book } = JSON.parse(await saveBookFile(page));
  return book.cells.find((cell: { kind: string }) => cell.kind === 'section').section.regions;
}

test('a region tapers to a second width, in the units of the page; emptied, it is of one width again', async () => {
  const page = await openBook(drawnBook());
  expect(await field(page).inputValue()).toBe('');
  expect(await field(page).getAttribute('placeholder')).toBe('30.0');
  await expect.poll(() => cavity(page)).toBe(90);
  const plain = await regionsOf(page);

  await field(page).fill('80');
  await field(page).blur();
  await expect.poll(() => cavity(page)).toBe(165);
  expect(await regionsOf(page)).toEqual([plain[0], { ...plain[1], widthAtEnd: 0.08 }]);

  await page.getByRole('combobox', { name: 'Unit of length' }).selectOption('in');
  await expect.poll(() => field(page).inputValue()).toBe('3.1496');
  await field(page).fill('2 1/2');
  await field(page).blur();
  await expect.poll(() => field(page).inputValue()).toBe('2.50');
  await page.getByRole('combobox', { name: 'Unit of length' }).selectOption('mm');
  await expect.poll(() => field(page).inputValue()).toBe('63.5');
  await picture(page, 'taper');

  await field(page).fill('0');
  await page.getByText('Region Die has no width at its end.').first().waitFor();
  await field(page).fill('wide');
  await page.getByText('This is not a number.').first().waitFor();

  await field(page).fill('');
  await field(page).blur();
  await expect.poll(() => cavity(page)).toBe(90);
  expect(await regionsOf(page)).toEqual(plain);
  await page.keyboard.press('Control+z');
  await expect.poll(() => field(page).inputValue()).toBe('63.5');
});

test.each([390, 1440])('the table of regions fits a page of %i px', async (width) => {
  const page = await openBook(drawnBook());
  await page.setViewportSize({ width, height: 844 });
  await picture(page, `taper-${width}`);
  const table = page.locator('[data-kind="section"] .scroll-x', { has: field(page) });
  await table.scrollIntoViewIfNeeded();
  const [wide, held] = await table.evaluate((part) => [part.scrollWidth, part.clientWidth]);
  expect(wide).toBeLessThanOrEqual(held!);
});
