/**
 * `npm test`: installs, builds, checks and tests everything. Arguments after `--` go to vitest.
 * The last line is `N passed, N failed`, where each build and check counts as one.
 */
import { checkNode } from './checkNode.js';

checkNode();
const { installIfNeeded } = await import('./install.js');
await installIfNeeded();
const { prepare } = await import('./prepare.js');
const { runTests } = await import('./runTests.js');

const vitestArguments = process.argv.slice(2);
const prepared = await prepare(vitestArguments);
const tested = await runTests(vitestArguments, prepared.canTest);
const passed = prepared.passed + tested.passed;
const failed = prepared.failed + tested.failed;
// The exit waits for the line: a pipe may take it late.
process.stdout.write(`${passed} passed, ${failed} failed\n`, () => process.exit(failed === 0 ? 0 : 1));
