import type { Page } from 'playwright-core';

export interface BookFile {
  readonly name: string;
  readonly text: string;
}

/** Opens a book file the way a user does: the button, then the system's file window. */
export async function openBookFile(page: Page, { name, text }: BookFile): Promise<void> {
  const window = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a book file' }).first().click();
  await (await window).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
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
