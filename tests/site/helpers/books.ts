import type { Page } from 'playwright-core';

export interface BookFile {
  readonly name: string;
  readonly text: string;
}

/** A button pressed before the page has come to life does nothing, as for a user; who then presses again. */
const PRESSES = 6;
const UNTIL_PRESSED_AGAIN = 5000;

/** Opens a book file the way a user does: the button, then the system's file window. */
export async function openBookFile(page: Page, { name, text }: BookFile): Promise<void> {
  for (let press = 0; press < PRESSES; press++) {
    const window = page.waitForEvent('filechooser', { timeout: UNTIL_PRESSED_AGAIN }).catch(() => null);
    await page.getByRole('button', { name: 'Open a book file' }).first().click();
    const chooser = await window;
    if (!chooser) continue;
    await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    return;
  }
  throw new Error('The button “Open a book file” opens no file window.');
}

/** Saves the book as a file the way a user does, and gives its text. */
export async function saveBookFile(page: Page): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the book as a file' }).first().click();
  const stream = await (await saving).createReadStream();
  const pieces: Buffer[] = [];
  for await (const piece of stream) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString('utf8');
}
