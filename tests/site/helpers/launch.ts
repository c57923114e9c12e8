import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, firefox } from 'playwright-core';
import { inject } from 'vitest';
import { readBrowserNote } from '../../setup/browserNote.js';

/** How a page looks and moves. Chromium takes it for every page anew, Firefox when it is started. */
export interface Manner {
  readonly scheme: 'light' | 'dark';
  readonly moves: boolean;
}

/** The tests run in the Firefox that FIREFOX_PATH names, else in the browser that `npm test` found. */
export const isFirefox = Boolean(process.env['FIREFOX_PATH']);

const open = new Map<string, Promise<Browser>>();

/**
 * The browser for pages of one manner; Chromium is one for all. All test files share it, as they share this process:
 * it ends when the process does. One that has died is replaced.
 */
export async function browserFor(manner: Manner): Promise<Browser> {
  const key = isFirefox ? JSON.stringify(manner) : '';
  const browser = await open.get(key);
  if (browser?.isConnected()) return browser;
  const launched = isFirefox ? launchFirefox(manner) : launchChromium();
  open.set(key, launched);
  return launched;
}

async function launchChromium(): Promise<Browser> {
  const note = readBrowserNote();
  if (!note)
    throw new Error('No browser has been looked for yet: run `npm test`, or `node tests/setup/browser.js`.');
  const environment = Object.entries({ ...process.env, ...note.env }).filter(
    ([, value]) => value !== undefined,
  );
  const folder = profileWithoutAutofill();
  const env = Object.fromEntries(environment) as Record<string, string>;
  const own = await chromium.launchPersistentContext(folder, { ...note, env });
  const browser = own.browser();
  if (!browser) throw new Error('The context of the profile has no browser.');
  return browser;
}

/**
 * A browser looks through every field of a page, at each change, for names and addresses that it could fill in: a fifth
 * of its work on a book of many fields, and nothing that a test looks at. It is told so by its profile alone.
 */
function profileWithoutAutofill(): string {
  const folder = mkdtempSync(join(inject('profiles'), 'profile-'));
  const settings = {
    autofill: { enabled: false, profile_enabled: false, credit_card_enabled: false },
    credentials_enable_service: false,
  };
  mkdirSync(join(folder, 'Default'));
  writeFileSync(join(folder, 'Default', 'Preferences'), JSON.stringify(settings));
  return folder;
}

const FIREFOX_SCHEMES = { dark: 0, light: 1 };

function launchFirefox({ scheme, moves }: Manner): Promise<Browser> {
  return firefox.launch({
    channel: 'moz-firefox',
    executablePath: fileURLToPath(new URL('../../setup/firefoxBridge.js', import.meta.url)),
    firefoxUserPrefs: {
      // The list of downloads would open over the page and take the focus from it.
      'browser.download.alwaysOpenPanel': false,
      'layout.css.prefers-color-scheme.content-override': FIREFOX_SCHEMES[scheme],
      'ui.prefersReducedMotion': moves ? 0 : 1,
    },
  });
}
