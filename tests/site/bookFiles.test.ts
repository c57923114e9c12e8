import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openBookFile, saveBookFile } from './helpers/books';
import { useSite } from './helpers/openPage';

const openPage = useSite();
const sound = readFileSync(fileURLToPath(new URL('../book/old/v1.pourbook.json', import.meta.url)), 'utf8');

const title = (page: Page) => page.getByRole('textbox', { name: 'Title of the book' });

const changed = (change: (book: Record<string, unknown>) => void): string => {
  const book = JSON.parse(sound) as Record<string, unknown>;
  change(book);
  return JSON.stringify(book);
};

const BROKEN: readonly (readonly [name: string, text: string, words: RegExp])[] = [
  ['not-json', 'metal at 720 degrees', /could not be opened/],
  ['empty', '', /could not be opened/],
  ['other-json', '{"recipe": ["flour"]}', /could not be opened/],
  ['a-list', '[1, 2, 3]', /could not be opened/],
  ['a-newer-version', changed((book) => Object.assign(book, { version: 999 })), /999/],
  ['cut-short', sound.slice(0, sound.length / 2), /could not be opened/],
];

test('a book comes back from its file as it was, broken ones are refused in words, and a reload finds it again', async () => {
  const page = await openPage({ isBare: true });
  // The test's own, so that nothing else can be taken for it.
  await openBookFile(page, { name: 'own.pourbook.json', text: sound });
  await expect.poll(() => title(page).inputValue()).toBe('Hinge arms, trial 1');
  await title(page).fill('Trial of the third of May');
  await title(page).blur();

  for (const [name, text, words] of BROKEN) {
    await openBookFile(page, { name: `${name}.pourbook.json`, text });
    const alert = page.getByRole('alert').filter({ hasText: `${name}.pourbook.json` });
    await alert.waitFor();
    const said = await alert.textContent();
    expect(said, name).toMatch(words);
    expect(said, name).not.toMatch(/undefined|\[object|SyntaxError|TypeError/);
    expect(await title(page).inputValue(), name).toBe('Trial of the third of May');
  }

  const saved = await saveBookFile(page);
  await title(page).fill('Another');
  await openBookFile(page, { name: 'saved.pourbook.json', text: saved });
  await expect.poll(() => title(page).inputValue()).toBe('Trial of the third of May');
  expect(JSON.parse(await saveBookFile(page))).toEqual(JSON.parse(saved));

  await page.waitForTimeout(1500);
  await page.reload();
  await expect.poll(() => title(page).inputValue()).toBe('Trial of the third of May');
});
