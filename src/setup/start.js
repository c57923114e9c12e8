/** `npm start`: installs and builds what is needed, serves the page on this machine only, and prints its address. */
import { checkNode } from './checkNode.js';

checkNode();
const { chosenPort } = await import('./port.js');
const { installIfNeeded } = await import('./install.js');
const { buildOrExit, targets } = await import('./build.js');
const { projectFolder } = await import('./paths.js');

const [word] = process.argv.slice(2);
if (word !== undefined) {
  console.error(`npm start does not know “${word}”. For another port set PORT, as in PORT=4199 npm start.`);
  process.exit(1);
}
const chosen = chosenPort(process.env['PORT']);
if ('problem' in chosen) {
  console.error(chosen.problem);
  process.exit(1);
}
// Vite and Kit look for the project where they are started.
process.chdir(projectFolder);
await installIfNeeded();
await buildOrExit(targets.site);

const server = await serve(chosen);
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, close);
console.log('Quietpour is ready. Stop it with Ctrl-C.');
console.log(server.resolvedUrls?.local[0]);

/** @param {{ port: number, strict: boolean }} wanted */
async function serve(wanted) {
  const { preview } = await import('vite');
  try {
    return await preview({
      logLevel: 'warn',
      preview: { host: '127.0.0.1', port: wanted.port, strictPort: wanted.strict },
    });
  } catch (error) {
    console.error(
      `The page could not be served on port ${wanted.port}: ${/** @type {Error} */ (error).message}`,
    );
    console.error('Free that port or set PORT to another one.');
    process.exit(1);
  }
}

async function close() {
  // Vite listens too and would call the end by SIGTERM a failure.
  process.exitCode = 0;
  await server.close();
  process.exit(0);
}
