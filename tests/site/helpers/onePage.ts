import type { Page } from 'playwright-core';
import { afterEach, expect } from 'vitest';
import { openBookFile } from './books';
import { ONE_NOTE, useSite } from './openPage';

/** Opens a book, the text of its file, in the page that the tests of a file share. */
export type OpenBook = (text: string) => Promise<Page>;

/**
 * One page for all tests of a file, which begin with a book of their own in it: to start a page and its workers takes
 * longer than most tests. Before each book the page is emptied, so that no cell keeps what was done to its forerunner;
 * after a test that failed there is a new page. Call it at the top of the file.
 */
export function useOnePage(): OpenBook {
  const openPage = useSite('after all');
  let page: Page | null = null;

  afterEach(({ task }) => {
    if (task.result?.state === 'fail') page = null;
  });
  return async (text) => {
    if (page) await empty(page);
    else page = await openPage({ isBare: true });
    await page.locator('[data-cell]').first().waitFor();
    await openInstead(page, text);
    return page;
  };
}

/** As a page comes: at its usual size, in light, on a screen, with one note. */
async function empty(page: Page): Promise<void> {
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  await openInstead(page, ONE_NOTE);
  await expect.poll(() => page.locator('[data-cell]').count()).toBe(1);
}

async function openInstead(page: Page, text: string): Promise<void> {
  const { title } = JSON.parse(text).book;
  await openBookFile(page, { name: 'test.pourbook.json', text });
  const field = page.getByRole('textbox', { name: 'Title of the book' });
  await expect.poll(() => field.inputValue()).toBe(title);
}
