import { readFileSync } from 'node:fs';
import { buildOrExit, targets } from '../../src/setup/build.js';
import { inProject, projectFolder } from '../../src/setup/paths.js';
import { provideBrowser } from './browser.js';

/** Longest wait for the pours of one book [ms]. */
const PATIENCE = 120_000;

/** The built page, served on this machine, and a browser to look at it with. */
export async function showSite() {
  await buildOrExit(targets.site);
  const { preview } = await import('vite');
  const { chromium } = await import('playwright-core');
  process.chdir(projectFolder);
  const server = await preview({ logLevel: 'error', preview: { port: 0, host: '127.0.0.1' } });
  const note = await provideBrowser();
  const browser = await chromium.launch({ ...note, env: { ...process.env, ...note.env } });
  return {
    address: server.resolvedUrls?.local[0] ?? '',
    browser,
    close: () => browser.close().then(() => server.close()),
  };
}

/** @param {import('playwright-core').Page} page @param {string} file name of an example book's file */
export async function openExample(page, file) {
  // Before the page has come to life its buttons do nothing.
  await page.locator('[data-cell]').first().waitFor();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a book file' }).first().click();
  const path = inProject(`static/${file}`);
  await (await chooser).setFiles(path);
  const { title } = JSON.parse(readFileSync(path, 'utf8')).book;
  await page.waitForFunction(
    (wanted) => [...document.querySelectorAll('input')].some(({ value }) => value === wanted),
    title,
  );
}

/** Presses what begins a study, where one comes into sight. @param {import('playwright-core').Locator} cell */
export async function beginStudies(cell) {
  if (
    (await cell.locator('[data-kind="study"]').count()) +
      (await cell.and(cell.page().locator('[data-kind="study"]')).count()) ===
    0
  )
    return;
  const begin = cell.getByRole('button', { name: 'Pour this study' });
  await begin.waitFor({ timeout: PATIENCE });
  await begin.click();
}

/** @param {import('playwright-core').Page} page */
export async function waitForPours(page) {
  await page.waitForTimeout(1000);
  const busy = page.locator('[data-state="running"], [data-state="waiting"], [data-state="out of date"]');
  const until = Date.now() + PATIENCE;
  while ((await busy.count()) > 0 && Date.now() < until) await page.waitForTimeout(250);
}

/**
 * Says on the error stream what the page complains of.
 * @param {import('playwright-core').Page} page @param {string} name
 */
export function tellComplaints(page, name) {
  page.on('pageerror', (error) => console.error(`${name}: ${error}`));
  page.on('console', (message) => message.type() === 'error' && console.error(`${name}: ${message.text()}`));
}
