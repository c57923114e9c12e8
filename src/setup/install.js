import { existsSync, readFileSync } from 'node:fs';
import { npmCommand, run } from './command.js';
import { inProject } from './paths.js';

/**
 * What the lock file says of one package.
 * @typedef {{ version?: string, resolved?: string, optional?: boolean }} Locked
 * @typedef {{ packages?: Record<string, Locked> }} Lock
 */

/** @param {string} path @returns {Lock} */
const readLock = (path) => (existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : {});

/**
 * Whether something that is locked is not installed, or in another version. npm writes down what it has installed;
 * a test for the mere folder would leave stale packages after an update. Optional packages may be for other systems.
 * @param {Lock} locked package-lock.json
 * @param {Lock} installed node_modules/.package-lock.json
 */
export function isInstallNeeded(locked, installed) {
  const present = installed.packages ?? {};
  const wanted = Object.entries(locked.packages ?? {}).filter(
    ([path, { optional }]) => path !== '' && !optional,
  );
  return wanted.some(([path, { version }]) => present[path]?.version !== version);
}

/** Installs exactly what is locked, when it is not what is installed. */
export async function installIfNeeded() {
  const locked = readLock(inProject('package-lock.json'));
  if (!isInstallNeeded(locked, readLock(inProject('node_modules/.package-lock.json')))) return;
  console.error('Installing the packages named in package-lock.json …');
  const code = await run(npmCommand(['ci', '--no-audit', '--no-fund']));
  if (code === 0) return;
  console.error('npm ci failed, see above. Check the network or the npm registry setting, then start again.');
  process.exit(1);
}
