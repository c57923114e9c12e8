/** Writes docs/verification.md and docs/figures/*.svg: `npm run verify`. Exit code 1 when a figure is worse than it should be. */
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const docs = join(root, 'docs');

const PARTS = ['verify/verify', 'verify/refinement', 'book/readBook', 'cells/evaluate'];

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
          input: Object.fromEntries(PARTS.map((part) => [basename(part), join(root, 'src', `${part}.ts`)])),
          output: { entryFileNames: '[name].mjs' },
        },
      },
    });
    const parts = PARTS.map((part) => import(pathToFileURL(join(folder, `${basename(part)}.mjs`)).href));
    return Object.assign({}, ...(await Promise.all(parts)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const faultFile = join(docs, 'faults.json');
const faults = existsSync(faultFile) ? JSON.parse(readFileSync(faultFile, 'utf8')) : [];
const { verify, refinementFamily, readBook, evaluateBook } = await loadChecks();

/** Every pour of the example books, as the page would run it. */
function examplePours() {
  const files = readdirSync(join(root, 'static')).filter((file) => file.endsWith('.pourbook.json'));
  return files.flatMap((file) => {
    const { book } = readBook(readFileSync(join(root, 'static', file), 'utf8'));
    const evaluations = evaluateBook(book);
    return book.cells.flatMap(
      (/** @type {{ kind: string, id: string, name: string }} */ { kind, id, name }) => {
        const { plan } = evaluations.get(id);
        return kind === 'pour' && plan ? [{ book: book.title, pour: name, plan }] : [];
      },
    );
  });
}

const tell = (/** @type {string} */ line) => console.log(line);
const { page, figures, worse } = verify(faults, tell, [refinementFamily(examplePours())]);
mkdirSync(join(docs, 'figures'), { recursive: true });
writeFileSync(join(docs, 'verification.md'), page);
for (const { name, svg } of figures) writeFileSync(join(docs, 'figures', `${name}.svg`), svg);
console.log(`docs/verification.md and ${figures.length} figures written.`);
if (worse.length > 0) {
  console.log(`Worse than they should be:\n${worse.join('\n')}`);
  process.exitCode = 1;
}
