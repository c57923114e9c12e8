import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, inject, test } from 'vitest';
import { inProject } from '../../src/setup/paths.js';
import { waitUntilFresh } from './helpers/bench';
import { useSite } from './helpers/openPage';
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
  await page.keyboard.press('Escape');
  expect(await meaning.count()).toBe(0);

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
});

/** Scripts that the page asks for before anything else may weigh so much, packed [byte]. */
const HEAVIEST = 150_000;

test('the first view waits for little: charts, pours and the rarer inputs come after it', () => {
  const page = readFileSync(inProject('build/index.html'), 'utf8');
  const scripts = [...page.matchAll(/href="\.\/(_app\/[^"]+\.js)"/g)].map(([, path]) => `build/${path}`);
  expect(scripts.length).toBeGreaterThan(0);
  const packed = scripts.map((path) => gzipSync(readFileSync(inProject(path))).length);
  expect(packed.reduce((sum, size) => sum + size)).toBeLessThan(HEAVIEST);
});
