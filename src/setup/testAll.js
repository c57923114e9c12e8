import { runTests } from './runTests.js';
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
 * Everything. The browser tests come last and alone: beside others they take twice as long, and now and then one waits
 * too long for a page that gets no turn.
 * @returns {Promise<Tally>}
 */
export async function testAll() {
  await sync();
  const [built, pageReady] = await Promise.all([carryOutAll([commandLine]), carryOutAll([page, browser])]);
  const unit = ifReady(built, () => runTests(['--project', 'unit']));
  const [checked, tested] = await Promise.all([carryOutAll([lint, types]), unit]);
  const site = await ifReady(sum([built, pageReady]), () => runTests(['--project', 'site']));
  return sum([built, pageReady, checked, tested, site]);
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
