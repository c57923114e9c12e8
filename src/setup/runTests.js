import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packageScript, run } from './command.js';
import { readTally } from './tally.js';

/**
 * Runs vitest and gives how many tests passed and failed.
 * @param {string[]} vitestArguments
 * @returns {Promise<import('./tally.js').Tally>}
 */
export async function runTests(vitestArguments) {
  const folder = mkdtempSync(join(tmpdir(), 'quietpour-test-'));
  const file = join(folder, 'tally.json');
  const command = packageScript('vitest/vitest.mjs', ['run', ...vitestArguments]);
  try {
    const code = await run({ ...command, env: { QUIETPOUR_TALLY: file } }, 'inherit');
    return readTally(file, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
