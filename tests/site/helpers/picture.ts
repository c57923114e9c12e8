import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Keeps a picture of the page in the folder named by SHOTS; does nothing without it. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['SHOTS'];
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}
