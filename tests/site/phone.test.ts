import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { coarseFirstExample } from './helpers/coarseBook';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';

const openPage = useSite();
const PHONE = { width: 390, height: 844 };
const sampleOf = (kinds: readonly string[]): string => {
  const book = sampleBook();
  return writeBook({ ...book, cells: book.cells.filter(({ kind }) => kinds.includes(kind)) });
};

/** The right end of what is shown [px]. */
const rightOf = async (one: Locator): Promise<number> => {
  const { x, width } = (await one.boundingBox())!;
  return x + width;
};

test('on a phone each region has its fields and buttons in sight, and the name of its coat whole', async () => {
  const page = await openPage({ ...PHONE, book: sampleOf(['section']) });
  const { regions } = firstOf(sampleBook(), 'section').section;
  for (const { name } of regions) {
    const out = page.getByRole('button', { name: `Take out ${name}`, exact: true });
    await out.waitFor();
    expect(await rightOf(out), name).toBeLessThanOrEqual(390 - 16);
    const coat = page.getByRole('combobox', { name: `coat of ${name}` });
    // A cut name would not show: the closed list must be as wide as its widest name.
    const needed = await coat.evaluate((list: HTMLSelectElement) => {
      const free = list.cloneNode(true) as HTMLSelectElement;
      free.style.cssText = 'position:absolute;width:auto;min-width:0';
      list.parentElement!.append(free);
      const width = free.offsetWidth;
      free.remove();
      return width;
    });
    expect((await coat.boundingBox())!.width, name).toBeGreaterThanOrEqual(needed);
  }
  const overflowing = await page.evaluate(
    () =>
      [...document.querySelectorAll('[data-kind="section"] .scroll-x')].filter(
        (box) => box.scrollWidth > box.clientWidth,
      ).length,
  );
  expect(overflowing).toBe(0);
  await picture(page, 'phone-section');
});

test('on a phone the ring round a name keeps off the edge and off the line below, and an empty book off the edge', async () => {
  const page = await openPage({ ...PHONE, book: coarseFirstExample() });
  const name = page.getByRole('textbox', { name: /^Name of this (charge|pour)/ }).first();
  await name.waitFor();
  await name.focus();
  const field = (await name.boundingBox())!;
  expect(field.x).toBeGreaterThanOrEqual(6);
  expect(field.x + field.width).toBeLessThanOrEqual(390 - 6);
  const cell = page.locator('[data-cell]', { has: name }).first();
  const links = (await cell.locator('.links').boundingBox())!;
  expect(links.y).toBeGreaterThanOrEqual(field.y + field.height + 3);

  await page.getByRole('button', { name: 'Contents' }).click();
  await page
    .getByRole('dialog', { name: 'Contents' })
    .getByRole('button', { name: 'Begin a new book' })
    .click();
  const empty = page.getByText('Nothing in this book yet.');
  await empty.waitFor();
  const inset = await empty.evaluate((words) => Number.parseFloat(getComputedStyle(words).paddingLeft));
  expect(inset).toBeGreaterThanOrEqual(16);
});

/** Links and buttons of the book that a finger could miss. */
const small = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main a, main button')]
      .filter((one) => one.offsetParent !== null && !one.closest('.prose'))
      .filter((one) => one.getBoundingClientRect().height < 24 || one.getBoundingClientRect().width < 24)
      .map((one) => `${one.textContent}: ${one.offsetWidth} x ${one.offsetHeight}`),
  );

test('on a phone every link and button has room for a finger, and a pour wastes no height before its first fold', async () => {
  const page = await openPage({ ...PHONE, book: coarseFirstExample() });
  await waitUntilFresh(page);
  for (const cell of await page.locator('main [data-cell]').all()) await cell.scrollIntoViewIfNeeded();
  await page.locator('[data-kind="compare"] table').first().waitFor();
  expect(await small(page)).toEqual([]);

  const folded = page.locator('[data-kind="pour"]', { has: page.locator('[data-part="fold now"]') }).first();
  const now = folded.locator('[data-part="fold now"]');
  const times = folded.getByRole('slider').first();
  await times.scrollIntoViewIfNeeded();
  await times.focus();
  await times.press('Home');
  await now.getByText(/^No fold up to here/).waitFor();
  const before = (await now.boundingBox())!.height;
  // The coming fold stands there, as a schematic: no hole as high as it.
  expect(await now.locator('svg').count()).toBeGreaterThan(0);
  const used = await now.evaluate(
    (part) =>
      Math.max(...[...part.children].map((child) => child.getBoundingClientRect().bottom)) -
      part.getBoundingClientRect().top,
  );
  expect(used).toBeGreaterThan(0.6 * before);
  await times.press('End');
  await expect.poll(() => now.getByText(/^No fold up to here/).count()).toBe(0);
  expect((await now.boundingBox())!.height).toBe(before);
});

test('on a phone a change is taken back from the bar, wherever the page stands, and it is told which', async () => {
  const page = await openPage({ ...PHONE, book: sampleOf(['metal', 'section']) });
  const length = page.getByRole('textbox', { name: /^die length/ });
  const before = await length.inputValue();
  expect(await page.getByRole('button', { name: /^Take back/ }).count()).toBe(0);
  await length.fill('190');
  await length.press('Tab');
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  const back = page.getByRole('button', { name: /^Take back: / });
  const box = (await back.boundingBox())!;
  expect(box.y).toBeGreaterThanOrEqual(0);
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(40);
  await back.click();
  await page
    .locator('.topbar')
    .getByText(/^undone: /)
    .waitFor();
  expect(await length.inputValue()).toBe(before);
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Contents');
  await picture(page, 'phone-undone');
});
