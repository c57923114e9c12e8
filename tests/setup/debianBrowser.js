import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** Another apt may be at work. */
const WAIT = ['-o', 'DPkg::Lock::Timeout=300'];

/** On Ubuntu the chromium package only points to another store, so Debian alone is meant. */
function isRootOnDebian() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/etc/os-release'))
    return false;
  return /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
}

/** @param {string[]} args */
const apt = (args) =>
  spawnSync('apt-get', [...WAIT, ...args], {
    stdio: ['ignore', 2, 2],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

/**
 * Installs Debian's own Chromium where we may; null elsewhere or when apt fails.
 * @returns {string | null} its path
 */
export function debianBrowser() {
  if (!isRootOnDebian()) return null;
  console.error("Installing Debian's chromium for the tests …");
  const installed = apt(['update']) && apt(['install', '-y', '--no-install-recommends', 'chromium']);
  return installed ? '/usr/bin/chromium' : null;
}
