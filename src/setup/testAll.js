import { runTests, runTestsBeside } from './runTests.js';
import { browser, carryOutAll, commandLine, lint, page, sync, types } from './steps.js';
import { sum } from './tally.js';

/** @typedef {import('./tally.js').Tally} Tally */

/** @type {Tally} */
const NOT_RUN = { passed: 0, failed: 0 };

/**
 * Runs tests unless what they stand on has failed; such tests are not counted, the failed step is.
 * @param {Tally} before
 * @param {() => Promise<Tally>} tests
 */
async function ifReady(before, tests) {
  if (before.failed === 0) return tests();
  console.log('Tests were not run, because what they stand on failed, see above.');
  return NOT_RUN;
}

/**
 * Everything. The browser tests mostly wait for a page, so the other tests and the checks run beside them and give way:
 * side by side they take little longer than the browser tests alone.
 * @returns {Promise<Tally>}
 */
export async function testAll() {
  await sync();
  const commandLineBuilt = carryOutAll([commandLine]);
  const pageReady = carryOutAll([page, browser]);
  const site = async () => {
    const before = sum([await pageReady, await commandLineBuilt]);
    return ifReady(before, () => runTests(['--project', 'site']));
  };
  const unit = async () => ifReady(await commandLineBuilt, () => runTestsBeside(['--project', 'unit']));
  const checks = async () => {
    await commandLineBuilt;
    return carryOutAll([lint, types]);
  };
  return sum(await Promise.all([commandLineBuilt, pageReady, site(), unit(), checks()]));
}

/** @param {string[]} vitestArguments */
function unitTestsOnly(vitestArguments) {
  const projects = vitestArguments.filter((_, i) => vitestArguments[i - 1] === '--project');
  return projects.length > 0 && projects.every((project) => project === 'unit');
}

/**
 * The tests that vitest's arguments pick, and the checks.
 * What only the browser tests need is left out when unit tests alone are asked for.
 * @param {string[]} vitestArguments
 * @returns {Promise<Tally>}
 */
export async function testPicked(vitestArguments) {
  await sync();
  const needed = unitTestsOnly(vitestArguments) ? [commandLine] : [page, commandLine, browser];
  const [ready, checked] = await Promise.all([carryOutAll(needed), carryOutAll([lint, types])]);
  const tested = await ifReady(ready, () => runTests(vitestArguments));
  return sum([ready, checked, tested]);
}
