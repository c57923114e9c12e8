import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));
const CORE = join(SRC, 'core');
/** Under node_modules, whose modules the test runner leaves to Node itself. */
const OUTPUT = fileURLToPath(new URL('../../node_modules/.quietpour', import.meta.url));

/** @param {string} path */
const isModule = (path) => path.endsWith('.ts') && !path.endsWith('.d.ts');
/** @param {string} path */
const withoutEnding = (path) => path.slice(0, -'.ts'.length);

/** Entry names, such as `flow/flow`, and their source files. */
function coreModules() {
  const names = readdirSync(CORE, { recursive: true, encoding: 'utf8' }).filter(isModule).map(withoutEnding);
  return Object.fromEntries(names.map((name) => [name.split(sep).join('/'), join(CORE, `${name}.ts`)]));
}

/** Builds every module of src/core as a JavaScript module of its own, in a new folder; gives the folder. */
async function buildCore() {
  mkdirSync(OUTPUT, { recursive: true });
  const outDir = mkdtempSync(join(OUTPUT, 'core-'));
  await build({
    configFile: false,
    logLevel: 'error',
    resolve: { alias: { $src: SRC } },
    publicDir: false,
    build: {
      ssr: true,
      outDir,
      target: 'node20',
      minify: false,
      sourcemap: 'inline',
      rolldownOptions: {
        input: coreModules(),
        preserveEntrySignatures: 'strict',
        output: {
          preserveModules: true,
          preserveModulesRoot: CORE,
          entryFileNames: '[name].js',
          topLevelVar: false,
        },
      },
    },
  });
  return outDir;
}

/**
 * Hands the tests the solver as Node's own modules. The test runner looks every imported name up in an object at each
 * use, which doubles the time of the solver's loops. Left out while watching, where the sources change.
 * @returns {import('vite').Plugin}
 */
export function nativeCore() {
  /** @type {Promise<string> | undefined} */
  let built;
  let watching = false;
  return {
    name: 'native-core',
    enforce: 'pre',
    configResolved(config) {
      watching = config.test?.watch ?? false;
    },
    async resolveId(source, importer, options) {
      if (watching) return null;
      const found = await this.resolve(source, importer, { ...options, skipSelf: true });
      if (!found?.id.startsWith(CORE + sep) || !isModule(found.id)) return null;
      built ??= buildCore();
      return { id: join(await built, `${withoutEnding(relative(CORE, found.id))}.js`), external: true };
    },
    async buildEnd() {
      if (built) rmSync(await built, { recursive: true, force: true });
    },
  };
}
