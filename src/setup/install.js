import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { npmCommand, run } from './command.js';
import { inProject } from './paths.js';

/** Kept inside node_modules, so that it goes when the folder goes. */
const STAMP = inProject('node_modules/.quietpour-lock');

const lockHash = () =>
  createHash('sha256')
    .update(readFileSync(inProject('package-lock.json')))
    .digest('hex');

const installedHash = () => (existsSync(STAMP) ? readFileSync(STAMP, 'utf8') : '');

/**
 * Installs the locked packages when the lock file is not the one they were installed from.
 * A test for the mere folder would leave stale packages after an update.
 */
export async function installIfNeeded() {
  const wanted = lockHash();
  if (installedHash() === wanted) return;
  console.error('Installing the packages named in package-lock.json …');
  const code = await run(npmCommand(['ci', '--no-audit', '--no-fund']));
  if (code !== 0) {
    console.error(
      'npm ci failed, see above. Check the network or the npm registry setting, then start again.',
    );
    process.exit(1);
  }
  writeFileSync(STAMP, wanted);
}
