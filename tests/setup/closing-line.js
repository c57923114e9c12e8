import { writeFileSync } from 'node:fs';

/**
 * Counts the tests that passed and failed. Under `npm test` the count is handed over in a file, because the checks
 * before the tests are counted too and the closing line must stand last; otherwise it is printed here.
 */
export default class ClosingLine {
  /** @param {ReadonlyArray<import('vitest/node').TestModule>} modules */
  onTestRunEnd(modules) {
    const tally = count(modules);
    const handOver = process.env['QUIETPOUR_TALLY'];
    if (handOver) writeFileSync(handOver, JSON.stringify(tally));
    // After the summary of the default reporter.
    else setTimeout(() => console.log(`${tally.passed} passed, ${tally.failed} failed`), 0);
  }
}

/** @param {ReadonlyArray<import('vitest/node').TestModule>} modules */
function count(modules) {
  const tally = { passed: 0, failed: 0 };
  for (const module of modules) {
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      if (state === 'passed' || state === 'failed') tally[state] += 1;
    }
    // A file that could not be loaded has no tests to count.
    tally.failed += module.errors().length;
  }
  return tally;
}
