import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { inProject } from '../../src/setup/paths.js';
import { useSite } from './helpers/openPage';

const openPage = useSite();

test('the page opens under its content policy', async () => {
  const page = await openPage();
  await expect.poll(() => page.title()).toContain('Quietpour');
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
