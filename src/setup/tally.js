import { existsSync, readFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number }} Tally */

/**
 * @param {readonly Tally[]} tallies
 * @returns {Tally}
 */
export const sum = (tallies) => ({
  passed: tallies.reduce((all, { passed }) => all + passed, 0),
  failed: tallies.reduce((all, { failed }) => all + failed, 0),
});

/**
 * What a run of vitest handed over.
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
