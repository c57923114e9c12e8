import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { packageScript, runQuietly } from './command.js';
import { inProject, projectFolder } from './paths.js';

/** Files whose content decides both builds. */
const CONFIGURATION = ['package-lock.json', 'vite.config.ts', 'svelte.config.js', 'tsconfig.json'];
/** Folders whose content decides both builds; the set-up scripts themselves are not built. */
const SOURCES = ['src', 'static'];
const NOT_BUILT = inProject('src/setup');

/**
 * What can be built. Each stamp lies inside the folder that its build empties first,
 * so an interrupted or hand-made build never passes for a fresh one.
 * @typedef {{ name: string, args: string[], stamp: string, result: string }} Target
 * @type {{ site: Target, commandLine: Target }}
 */
export const targets = {
  site: {
    name: 'the page',
    args: ['build', '--logLevel', 'warn'],
    stamp: inProject('.svelte-kit/output/sources.sha256'),
    result: inProject('build/index.html'),
  },
  commandLine: {
    name: 'the command line',
    args: ['build', '--mode', 'cli', '--logLevel', 'warn'],
    stamp: inProject('dist/sources.sha256'),
    result: inProject('dist/quietpour.js'),
  },
};

/**
 * @param {string} folder
 * @returns {string[]} every file below it, in a fixed order
 */
function filesBelow(folder) {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    if (path === NOT_BUILT) return [];
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

/** Hash of all that the builds are made from: content, not times, because a clone or checkout resets times. */
export function sourcesHash() {
  const hash = createHash('sha256');
  const files = [
    ...CONFIGURATION.map(inProject),
    ...SOURCES.map(inProject).filter(existsSync).flatMap(filesBelow),
  ];
  for (const file of files) hash.update(`${relative(projectFolder, file)}\n`).update(readFileSync(file));
  return hash.digest('hex');
}

/** @param {Target} target @param {string} hash */
const isFresh = (target, hash) =>
  existsSync(target.result) && existsSync(target.stamp) && readFileSync(target.stamp, 'utf8') === hash;

/**
 * Builds one target when its sources changed since it was last built.
 * @param {Target} target
 * @returns {Promise<{ code: number, output: string }>}
 */
export async function buildIfStale(target) {
  const hash = sourcesHash();
  if (isFresh(target, hash)) return { code: 0, output: '' };
  console.error(`Building ${target.name} …`);
  // Set here, because a test run has set another, and the page would then carry its development checks.
  const env = { NODE_ENV: 'production' };
  const result = await runQuietly({ ...packageScript('vite/bin/vite.js', target.args), env });
  if (result.code === 0) writeFileSync(target.stamp, hash);
  return result;
}

/**
 * As `buildIfStale`, but ends the process with the build's own words when it fails.
 * @param {Target} target
 */
export async function buildOrExit(target) {
  const { code, output } = await buildIfStale(target);
  if (code === 0) return;
  console.error(output);
  console.error(`Building ${target.name} failed, see above.`);
  process.exit(1);
}
