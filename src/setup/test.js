/**
 * `npm test`: installs, builds, checks and tests everything. Arguments after `--` go to vitest.
 * The last line is `N passed, N failed`, where each build and check counts as one.
 */
import { checkNode } from './checkNode.js';

checkNode();
const { installIfNeeded } = await import('./install.js');
await installIfNeeded();
const { testAll, testPicked } = await import('./testAll.js');

const vitestArguments = process.argv.slice(2);
const { passed, failed } = await (vitestArguments.length === 0 ? testAll() : testPicked(vitestArguments));
// The exit waits for the line: a pipe may take it late.
process.stdout.write(`${passed} passed, ${failed} failed\n`, () => process.exit(failed === 0 ? 0 : 1));
