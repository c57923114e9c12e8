/** Writes docs/verification.md and docs/figures/*.svg: `npm run verify`. Exit code 1 when a figure is worse than it should be. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const docs = join(root, 'docs');

/** Bundles the checks once, so that they run as fast as the command line. */
async function loadChecks() {
  const folder = mkdtempSync(join(tmpdir(), 'quietpour-verify-'));
  try {
    await build({
      root,
      configFile: false,
      logLevel: 'warn',
      publicDir: false,
      resolve: { alias: { $src: join(root, 'src') } },
      ssr: { noExternal: true, target: 'node' },
      build: {
        ssr: true,
        outDir: folder,
        emptyOutDir: true,
        target: 'node20',
        rolldownOptions: {
          input: { verify: join(root, 'src/verify/verify.ts') },
          output: { entryFileNames: '[name].mjs' },
        },
      },
    });
    return await import(pathToFileURL(join(folder, 'verify.mjs')).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const faultFile = join(docs, 'faults.json');
const faults = existsSync(faultFile) ? JSON.parse(readFileSync(faultFile, 'utf8')) : [];
const { verify } = await loadChecks();
const { page, figures, worse } = verify(faults, (/** @type {string} */ line) => console.log(line));
mkdirSync(join(docs, 'figures'), { recursive: true });
writeFileSync(join(docs, 'verification.md'), page);
for (const { name, svg } of figures) writeFileSync(join(docs, 'figures', `${name}.svg`), svg);
console.log(`docs/verification.md and ${figures.length} figures written.`);
if (worse.length > 0) {
  console.log(`Worse than they should be:\n${worse.join('\n')}`);
  process.exitCode = 1;
}
