import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { OFF_BY_PLAYWRIGHT } from './browserFeatures.js';

test('all that Playwright switches off in Chromium stays off beside what the tests switch off', () => {
  const source = readFileSync(
    createRequire(import.meta.url).resolve('playwright-core/lib/coreBundle'),
    'utf8',
  );
  const list = /disabledFeatures = \[([\s\S]*?)\]/.exec(source)?.[1] ?? '';
  const named = list.split('\n').flatMap((line) => /^\s*"(\w+)"/.exec(line)?.slice(1) ?? []);
  expect(named.length).toBeGreaterThan(5);
  expect(OFF_BY_PLAYWRIGHT).toEqual(expect.arrayContaining(named));
});
