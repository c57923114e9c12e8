import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packageScript, run } from './command.js';

/** @typedef {{ passed: number, failed: number }} Tally */

/**
 * @param {string} file
 * @param {number} code vitest's exit code
 * @returns {Tally}
 */
export function readTally(file, code) {
  /** @type {Tally} */
  const tally = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { passed: 0, failed: 0 };
  // An error outside every test, or a run that broke off, is a failure although no test failed.
  return code !== 0 && tally.failed === 0 ? { ...tally, failed: 1 } : tally;
}

/**
 * Runs vitest and gives how many tests passed and failed.
 * @param {string[]} vitestArguments
 * @param {boolean} canTest false when a build that the tests stand on has failed
 * @returns {Promise<Tally>}
 */
export async function runTests(vitestArguments, canTest) {
  if (!canTest) {
    console.log('The tests were not run, because what they stand on failed, see above.');
    return { passed: 0, failed: 0 };
  }
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
