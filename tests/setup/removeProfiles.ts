import { existsSync, readdirSync, readlinkSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** A browser that is ended may still write for a moment, and a folder that is written to cannot be removed [ms]. */
const MOMENT = 250;
const MOST_TRIES = 20;

/**
 * Ends the browsers whose profiles lie in this folder, which are those of the tests, and removes it for good: a browser that
 * lives on makes its files anew. Never rejects: what is left is the system's to clear.
 */
export async function removeProfiles(folder: string): Promise<void> {
  for (const profile of readdirSync(folder)) endBrowser(join(folder, profile));
  for (let tries = 0; tries < MOST_TRIES && existsSync(folder); tries++) {
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => undefined);
    await pause(MOMENT);
  }
}

/** Chromium names itself in its profile, as host and process; where it does not, it ends with the process of the tests. */
function endBrowser(profile: string): void {
  try {
    const owner = readlinkSync(join(profile, 'SingletonLock'));
    const at = owner.lastIndexOf('-');
    if (owner.slice(0, at) === hostname()) process.kill(Number(owner.slice(at + 1)), 'SIGKILL');
  } catch {
    // No browser runs there.
  }
}
