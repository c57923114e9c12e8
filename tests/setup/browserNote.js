import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where the browser that was found is written down for the tests. */
const NOTE = fileURLToPath(new URL('../../.browser.json', import.meta.url));

/**
 * How the tests start their browser.
 * @typedef {{ executablePath: string, args: string[], env: Record<string, string> }} BrowserNote
 */

/** @param {BrowserNote} note */
export const writeBrowserNote = (note) => writeFileSync(NOTE, `${JSON.stringify(note, null, 2)}\n`);

/**
 * The note, or null when no browser has been looked for yet or the note cannot be read.
 * @returns {BrowserNote | null}
 */
export function readBrowserNote() {
  if (!existsSync(NOTE)) return null;
  try {
    return JSON.parse(readFileSync(NOTE, 'utf8'));
  } catch {
    return null;
  }
}
