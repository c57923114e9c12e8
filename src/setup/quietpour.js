/** `npm run quietpour -- …`: builds the command line when its sources changed, then runs it. */
import { checkNode } from './checkNode.js';

checkNode();
const { installIfNeeded } = await import('./install.js');
const { buildOrExit, targets } = await import('./build.js');
const { run } = await import('./command.js');

await installIfNeeded();
await buildOrExit(targets.commandLine);
process.exit(await runCommandLine());

/** Relative book paths are meant from where the user stands; npm moves to the project's folder and says where that was. */
function runCommandLine() {
  const folder = process.env['INIT_CWD'] ?? process.cwd();
  const args = [targets.commandLine.result, ...process.argv.slice(2)];
  return run({ program: process.execPath, args, folder }, 'inherit');
}
