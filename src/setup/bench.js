/** `npm run bench`: builds the command line when its sources changed, then runs the benchmark that is built with it. */
import { checkNode } from './checkNode.js';

checkNode();
const { installIfNeeded } = await import('./install.js');
const { buildOrExit, targets } = await import('./build.js');
const { run } = await import('./command.js');
const { inProject } = await import('./paths.js');

await installIfNeeded();
await buildOrExit(targets.commandLine);
process.exit(await run({ program: process.execPath, args: [inProject('dist/bench.js')] }, 'inherit'));
