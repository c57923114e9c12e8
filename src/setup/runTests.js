import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packageScript, run, runQuietly } from './command.js';
import { readTally } from './tally.js';

/** @typedef {import('./tally.js').Tally} Tally */
/** @typedef {import('./command.js').Command} Command */

/**
 * Runs vitest by `carryOut`, which gives its exit code, and counts the tests that passed and failed.
 * @param {string[]} vitestArguments
 * @param {(command: Command) => Promise<number>} carryOut
 * @returns {Promise<Tally>}
 */
async function counted(vitestArguments, carryOut) {
  const folder = mkdtempSync(join(tmpdir(), 'quietpour-test-'));
  const file = join(folder, 'tally.json');
  const command = packageScript('vitest/vitest.mjs', ['run', ...vitestArguments]);
  try {
    const code = await carryOut({ ...command, env: { QUIETPOUR_TALLY: file } });
    return readTally(file, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Runs tests with their reports shown as they come.
 * @param {string[]} vitestArguments
 */
export const runTests = (vitestArguments) => counted(vitestArguments, (command) => run(command, 'inherit'));

/**
 * Runs tests that give way to whatever else runs; their reports are shown in one piece at the end.
 * @param {string[]} vitestArguments
 */
export const runTestsBeside = (vitestArguments) =>
  counted(vitestArguments, async (command) => {
    const { code, output } = await runQuietly({ ...command, givesWay: true });
    console.log(output.trimEnd());
    return code;
  });
