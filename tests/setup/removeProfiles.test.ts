import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, symlinkSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { removeProfiles } from './removeProfiles';

/** Writes files into its folder without end, and makes the folder anew where it is gone. */
const WRITER = `
const { mkdirSync, writeFileSync } = require('node:fs');
for (let count = 0; ; count++) {
  try {
    mkdirSync(process.argv[1], { recursive: true });
    writeFileSync(process.argv[1] + '/' + (count % 500), '');
    if (count === 0) console.log('writing');
  } catch {}
}`;

test.skipIf(process.platform === 'win32')(
  'a profile whose browser still writes is removed for good, and the browser ended',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'quietpour-removed-'));
    const profile = join(folder, 'profile-1');
    mkdirSync(profile);
    const browser = spawn(process.execPath, ['-e', WRITER, join(profile, 'Default')]);
    const ended = once(browser, 'exit');
    await once(browser.stdout, 'data');
    symlinkSync(`${hostname()}-${browser.pid}`, join(profile, 'SingletonLock'));
    await removeProfiles(folder);
    await ended;
    await pause(100);
    expect(existsSync(folder)).toBe(false);
  },
);
