import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { coarseFirstExample } from './helpers/coarseBook';
import { isFirefox } from './helpers/launch';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();
const MINUS = '\u2212';
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
  expect(await page.locator('.topbar').getByRole('button', { name: /^Undo/ }).count()).toBe(0);
  await length.fill('190');
  await length.press('Tab');
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  const back = page.locator('.topbar').getByRole('button', { name: /^Undo: / });
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

test.skipIf(isFirefox)(
  'on a phone, whose keypad may lack the minus, a button turns the sign of a number that may be negative, of no other',
  async () => {
    const page = await openPage({
      ...PHONE,
      isTouched: true,
      book: sampleOf(['metal', 'section', 'tilt', 'charge']),
    });
    const start = page.getByRole('textbox', { name: 'start at' });
    const turn = page.getByRole('button', { name: 'Change the sign of start at' });
    await turn.waitFor();
    const before = await start.inputValue();
    expect(before).toMatch(/^\+/);
    await turn.tap();
    await expect.poll(() => start.inputValue()).toBe(before.replace('+', MINUS));
    await turn.tap();
    await expect.poll(() => start.inputValue()).toBe(before);

    // Typed as on the keypad: emptied, the sign, then the digits; the field keeps the focus, and with it the keypad.
    await start.tap();
    await start.fill('');
    await turn.tap();
    expect(await start.evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.type('12');
    await page.keyboard.press('Enter');
    await expect.poll(() => start.inputValue()).toBe(`${MINUS}12.0`);
    await page
      .locator('.topbar')
      .getByRole('button', { name: /^Undo: / })
      .click();
    await expect.poll(() => start.inputValue()).toBe(before);
    // By key.
    await turn.press('Enter');
    await expect.poll(() => start.inputValue()).toBe(before.replace('+', MINUS));
    const { width, height } = (await turn.boundingBox())!;
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(28);

    const withSign = await page
      .getByRole('button', { name: /^Change the sign of/ })
      .evaluateAll((all) =>
        all.map((one) => one.getAttribute('aria-label')!.replace('Change the sign of ', '')),
      );
    expect(withSign).toContain('pivot y');
    expect(withSign).toContain('F1 y');
    for (const name of ['rate', 'F1 x', 'mouth at x', 'cavities side by side', 'smoothed over']) {
      expect(await page.getByRole('textbox', { name }).count(), name).toBeGreaterThan(0);
      expect(withSign).not.toContain(name);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    const tooWide = await page.evaluate(
      () =>
        [...document.querySelectorAll('[data-kind="section"] .scroll-x')].filter(
          (box) => box.scrollWidth > box.clientWidth,
        ).length,
    );
    expect(tooWide).toBe(0);
    expect(await seriousBarriers(page)).toEqual([]);
    await picture(page, 'phone-signs');
  },
);

test('where there is a keyboard no button for the sign stands beside a number', async () => {
  const page = await openPage({ book: sampleOf(['tilt']) });
  await page.getByRole('textbox', { name: 'start at' }).waitFor();
  expect(await page.getByRole('button', { name: /^Change the sign/ }).count()).toBe(0);
});

test('on a phone the bar of a running pour begins where its words do, and is as wide as they may be', async () => {
  const book = sampleBook();
  const fine = { meshCells: 1600, capillaryGate: true, settlingTime: 4 };
  const cells = book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation: fine } : cell));
  const page = await openPage({ ...PHONE, book: writeBook({ ...book, cells }) });
  const banner = page.locator('.banner', {
    has: page.getByRole('progressbar', { name: 'Share of the run done' }),
  });
  await banner.first().waitFor({ timeout: 60_000 });
  const [bar, words, held] = await banner.first().evaluate((one) => {
    const box = (part: Element) => part.getBoundingClientRect();
    const { clientWidth } = one;
    return [box(one.querySelector('progress')!), box(one.querySelector('.btn')!), clientWidth] as const;
  });
  expect(Math.abs(bar.left - words.left)).toBeLessThan(2);
  expect(bar.width).toBeGreaterThan(0.8 * held);
  await picture(page, 'phone-running');
});
