import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

/**
 * The README shows what a run of an example prints. Written anew by:
 *   WRITE_README=1 npx vitest run --project unit tests/docs/readmeRun.test.ts
 */
const README = new URL('../../README.md', import.meta.url);
const COMMAND = fileURLToPath(new URL('../../src/setup/quietpour.js', import.meta.url));
const SHOWN = /(`run (\S+)` prints:\n\n```text\n)([\s\S]*?)(```\n)/;

it('what the README shows of a run is what the run prints', () => {
  const text = readFileSync(README, 'utf8');
  const [whole, head, book, , foot] = SHOWN.exec(text)!;
  const printed = execFileSync(process.execPath, [COMMAND, 'run', book!], { encoding: 'utf8' });
  const now = text.replace(whole, () => `${head}${printed.trimEnd()}\n${foot}`);
  if (process.env['WRITE_README']) writeFileSync(README, now);
  expect(readFileSync(README, 'utf8')).toBe(now);
}, 120_000);
