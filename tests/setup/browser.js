import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { withoutFeatures } from './browserFeatures.js';
import { writeBrowserNote } from './browserNote.js';
import { debianBrowser } from './debianBrowser.js';
import { packedBrowser } from './packedBrowser.js';
import { usualPlaces } from './systemBrowsers.js';

/** @typedef {import('./browserNote.js').BrowserNote} BrowserNote */

const QUIET = [
  withoutFeatures,
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NO_BROWSER =
  'No browser for the tests: install Google Chrome, Chromium or Microsoft Edge, or set CHROME_PATH to one.';

/**
 * The note for one browser. Chromium's own sandbox does not work for root nor for the packed browser.
 * @param {string} executablePath
 * @param {{ env?: Record<string, string>, packed?: boolean }} [how]
 * @returns {BrowserNote}
 */
function noteFor(executablePath, { env = {}, packed = false } = {}) {
  const bare = packed || process.getuid?.() === 0;
  return { executablePath, env, args: bare ? ['--no-sandbox', ...QUIET] : QUIET };
}

/**
 * Whether the browser really starts: a file of the right name is no proof.
 * @param {BrowserNote} note
 */
async function starts(note) {
  if (!existsSync(note.executablePath)) return false;
  try {
    const browser = await chromium.launch({ ...note, env: { ...process.env, ...note.env }, timeout: 30_000 });
    await browser.close();
    return true;
  } catch (error) {
    console.error(`${note.executablePath} does not start: ${String(error).split('\n')[0]}`);
    return false;
  }
}

/** @returns {Promise<BrowserNote | null>} */
async function namedBrowser() {
  const path = process.env['CHROME_PATH'];
  if (!path) return null;
  const note = noteFor(path);
  if (await starts(note)) return note;
  throw new Error(`CHROME_PATH is ${path}, which does not start. Correct it or unset it.`);
}

/** @returns {Promise<BrowserNote | null>} */
async function installedBrowser() {
  // Lets the other ways be tried on a machine that has a browser.
  if (process.env['NO_SYSTEM_BROWSER'] === '1') return null;
  for (const place of usualPlaces()) {
    const note = noteFor(place);
    if (existsSync(place) && (await starts(note))) return note;
  }
  return null;
}

/** @returns {Promise<BrowserNote | null>} */
async function fetchedBrowser() {
  try {
    const packed = await packedBrowser();
    if (!packed) return null;
    const note = noteFor(packed.executablePath, { env: packed.env, packed: true });
    return (await starts(note)) ? note : null;
  } catch (error) {
    console.error(`The packed browser could not be had: ${/** @type {Error} */ (error).message}`);
    return null;
  }
}

/** @returns {Promise<BrowserNote | null>} */
async function aptBrowser() {
  const path = debianBrowser();
  const note = path ? noteFor(path) : null;
  return note && (await starts(note)) ? note : null;
}

/**
 * Finds or fetches a browser and writes it down for the tests. The order: the one named in CHROME_PATH; one that is
 * installed; Chromium out of an npm package (Linux x64); Debian's own package (as root). Throws when there is none.
 */
export async function provideBrowser() {
  const ways = [namedBrowser, installedBrowser, fetchedBrowser, aptBrowser];
  for (const way of ways) {
    const note = await way();
    if (!note) continue;
    writeBrowserNote(note);
    return note;
  }
  throw new Error(NO_BROWSER);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { executablePath } = await provideBrowser();
  console.log(executablePath);
}
