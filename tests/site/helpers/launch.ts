import { type Browser, chromium } from 'playwright-core';
import { readBrowserNote } from '../../setup/browserNote.js';

/** Starts the browser that `npm test` found. */
export function launchBrowser(): Promise<Browser> {
  const note = readBrowserNote();
  if (!note)
    throw new Error('No browser has been looked for yet: run `npm test`, or `node tests/setup/browser.js`.');
  const environment = Object.entries({ ...process.env, ...note.env }).filter(
    ([, value]) => value !== undefined,
  );
  return chromium.launch({ ...note, env: Object.fromEntries(environment) as Record<string, string> });
}
