import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, inject, test } from 'vitest';
import { inProject } from '../../src/setup/paths.js';
import { waitUntilFresh } from './helpers/bench';
import { useSite } from './helpers/openPage';

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

/** Scripts that the page asks for before anything else may weigh so much, packed [byte]. */
const HEAVIEST = 150_000;

test('the first view waits for little: charts, pours and the rarer inputs come after it', () => {
  const page = readFileSync(inProject('build/index.html'), 'utf8');
  const scripts = [...page.matchAll(/href="\.\/(_app\/[^"]+\.js)"/g)].map(([, path]) => `build/${path}`);
  expect(scripts.length).toBeGreaterThan(0);
  const packed = scripts.map((path) => gzipSync(readFileSync(inProject(path))).length);
  expect(packed.reduce((sum, size) => sum + size)).toBeLessThan(HEAVIEST);
});
