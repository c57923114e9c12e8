/** `npm run build`: the page into build/, the command line into dist/, each only when its sources changed. */
import { checkNode } from './checkNode.js';

checkNode();
const { buildOrExit, targets } = await import('./build.js');

await buildOrExit(targets.site);
await buildOrExit(targets.commandLine);
