import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { BrowserContext } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { TERMS } from '$src/report/terms';
import { entryName } from '$src/ui/guide/headingName';
import { inProject } from '../../src/setup/paths.js';
import { waitUntilFresh } from './helpers/bench';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { onePour } from './helpers/sampleFile';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();

/** So far below the top of the window lies what was gone to (scroll-padding-top) [px]. */
const PADDING = 64;

test('the page opens under its content policy, and a link to a cell lands on it while those above are still being drawn', async () => {
  const page = await openPage({ address: `${inject('siteUrl')}#three-starts` });
  await expect.poll(() => page.title()).toContain('Quietpour');
  const fromTop = () => page.locator('#three-starts').evaluate((cell) => cell.getBoundingClientRect().top);
  await page.locator('[data-kind="shop card"] select').waitFor();
  await expect.poll(fromTop).toBeCloseTo(PADDING, -1);
  await waitUntilFresh(page);
  await expect.poll(fromTop, { message: 'after the pours have come' }).toBeCloseTo(PADDING, -1);
});

test('a word says what it means by key, by press and to assistive technology, and nothing opens by itself', async () => {
  const page = await openPage({ book: onePour() });
  const word = page.locator('[data-kind="section"]').first().getByRole('button', { name: 'first flow' });
  const meaning = page.getByRole('tooltip');
  await word.waitFor();
  expect(await meaning.count()).toBe(0);
  const described = await word.getAttribute('aria-describedby');
  expect(await page.locator(`[id="${described}"]`).textContent()).toBe(
    'First flow: inclination at which metal first passes the mouth.',
  );

  await word.scrollIntoViewIfNeeded();
  await word.click();
  expect(await meaning.textContent()).toContain('first passes the mouth');
  const entry = page.getByRole('link', { name: 'Glossary: first flow' });
  expect((await entry.boundingBox())!.height).toBeGreaterThan(0);
  await picture(page, 'word-explained');
  await page.keyboard.press('Tab');
  expect(await entry.evaluate((node) => node === document.activeElement)).toBe(true);
  await page.keyboard.press('Escape');
  expect(await meaning.count()).toBe(0);
  expect(await word.evaluate((node) => node === document.activeElement)).toBe(true);

  await word.blur();
  await page.mouse.move(0, 0);
  await word.focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Tab');
  expect(await meaning.count()).toBe(1);
  const box = (await meaning.boundingBox())!;
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.x + box.width).toBeLessThanOrEqual(page.viewportSize()!.width);
  expect(await seriousBarriers(page)).toEqual([]);
  await page.mouse.click(5, 5);
  expect(await meaning.count()).toBe(0);

  // Under a pointer it stays while the pointer goes over to it, and its end leads to the line of the glossary.
  await word.hover();
  await entry.hover();
  await page.waitForTimeout(400);
  await entry.click();
  const line = page.getByRole('rowheader', { name: /^first flow/ });
  await expect.poll(() => line.evaluate((node) => node.matches(':target'))).toBe(true);
  const top = (await line.boundingBox())!.y;
  expect(top).toBeGreaterThanOrEqual(0);
  expect(top).toBeLessThan(page.viewportSize()!.height);
  await picture(page, 'word-in-glossary');
});

test('every word that is explained has its line in the glossary to lead to', async () => {
  const page = await openPage({ isBare: true });
  await page.goto(new URL('guide/glossary/', page.url()).href);
  const names = await page.locator('tbody th').evaluateAll((all) => all.map(({ id }) => id));
  expect(new Set(names).size).toBe(names.length);
  for (const { entry } of Object.values(TERMS)) expect(names).toContain(entryName(entry));
});

/** All that comes before the first drawing of the first example may weigh so much, packed [byte]. */
const HEAVIEST = 150_000;

/** Keeps the addresses of all that has come when the first section is drawn, in `window.atFirstDrawing`. */
function watchFirstDrawing(): void {
  const kept = window as unknown as { atFirstDrawing?: string[] };
  new MutationObserver((_, watch) => {
    if (!document.querySelector('[data-kind="section"] svg.drawing')) return;
    kept.atFirstDrawing = performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname);
    watch.disconnect();
  }).observe(document, { childList: true, subtree: true });
}

test('the first drawing waits for little: handles, tables, charts and pours come after it', async () => {
  const page = await openPage({
    prepare: async (context) => void (await context.addInitScript(watchFirstDrawing)),
  });
  const watched = await page.waitForFunction(
    () => (window as unknown as { atFirstDrawing?: string[] }).atFirstDrawing,
  );
  // Nothing waits for the picture of the tab, which a browser may fetch when it likes.
  const came = (await watched.jsonValue())!.filter((path) => path !== '/favicon.svg');
  expect(came.filter((path) => path.endsWith('.js')).length).toBeGreaterThan(1);
  expect(came.some((path) => path.endsWith('.pourbook.json'))).toBe(true);
  const packed = ['/index.html', ...came].map(
    (path) => gzipSync(readFileSync(inProject(`build${path}`))).length,
  );
  expect(packed.reduce((sum, size) => sum + size)).toBeLessThan(HEAVIEST);
});

/** The next book that is asked for does not come. */
async function loseNextBook(context: BrowserContext): Promise<void> {
  await context.route(/\.pourbook\.json$/, (route) => route.abort(), { times: 1 });
}

test('an example that did not come is told, and comes at the next visit; what was put in its place is kept', async () => {
  const page = await openPage({
    prepare: loseNextBook,
    expectedErrors: /Failed to load resource/,
  });
  const title = page.getByRole('textbox', { name: 'Title of the book' });
  await page.getByText('could not be fetched').waitFor();
  expect(await page.locator('[data-cell]').count()).toBe(0);
  // Leaving keeps what lies open at once.
  await page.reload();
  await page.locator('[data-cell]').first().waitFor();
  expect(await title.inputValue()).not.toBe('New book');

  await page.evaluate(() => indexedDB.deleteDatabase('quietpour'));
  await loseNextBook(page.context());
  await page.reload();
  await page.getByText('could not be fetched').waitFor();
  await page.getByRole('button', { name: /^note/ }).click();
  await expect.poll(() => page.locator('[data-cell]').count()).toBe(1);
  await page.reload();
  await page.locator('[data-cell]').first().waitFor();
  expect(await page.locator('[data-cell]').count()).toBe(1);
});
