/**
 * `npm run shots -- FOLDER`: pictures of the page with each example book, at three widths, light and dark:
 * the whole page, and each cell by itself. For looking at, not for comparing. BOOKS=NAME,NAME takes only those books.
 */
import { mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { buildOrExit, targets } from '../../src/setup/build.js';
import { inProject, projectFolder } from '../../src/setup/paths.js';
import { provideBrowser } from './browser.js';

const WIDTHS = [1440, 1024, 390];
const SCHEMES = /** @type {const} */ (['light', 'dark']);
const ENDING = '.pourbook.json';
/** Longest wait for the pours of one book [ms]. */
const PATIENCE = 120_000;

const folder = resolve(process.env['INIT_CWD'] ?? '.', process.argv[2] ?? 'shots');
const only = process.env['BOOKS']?.split(',');

await buildOrExit(targets.site);
const { preview } = await import('vite');
const { chromium } = await import('playwright-core');
process.chdir(projectFolder);
const server = await preview({ logLevel: 'error', preview: { port: 0, host: '127.0.0.1' } });
const address = server.resolvedUrls?.local[0] ?? '';
const note = await provideBrowser();
const browser = await chromium.launch({ ...note, env: { ...process.env, ...note.env } });
const books = readdirSync(inProject('static')).filter((file) => file.endsWith(ENDING));
for (const book of books.filter((file) => !only || only.includes(file.slice(0, -ENDING.length)))) {
  for (const scheme of SCHEMES) await photographBook(book, scheme);
}
await browser.close();
await server.close();
console.log(folder);

/** @param {string} file @param {'light' | 'dark'} scheme */
async function photographBook(file, scheme) {
  const context = await browser.newContext({
    colorScheme: scheme,
    reducedMotion: 'reduce',
    viewport: { width: 1440, height: 1000 },
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => console.error(`${file} ${scheme}: ${error}`));
  page.on(
    'console',
    (message) => message.type() === 'error' && console.error(`${file} ${scheme}: ${message.text()}`),
  );
  await page.goto(address);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a book file' }).first().click();
  await (await chooser).setFiles(inProject(`static/${file}`));
  await waitForPours(page);
  for (const width of WIDTHS)
    await photograph(page, `${file.slice(0, -ENDING.length)}-${width}-${scheme}`, width);
  await context.close();
}

/** @param {import('playwright-core').Page} page */
async function waitForPours(page) {
  await page.waitForTimeout(1000);
  const busy = page.locator('[data-state="running"], [data-state="waiting"], [data-state="out of date"]');
  const until = Date.now() + PATIENCE;
  while ((await busy.count()) > 0 && Date.now() < until) await page.waitForTimeout(250);
}

/** @param {import('playwright-core').Page} page @param {string} name @param {number} width */
async function photograph(page, name, width) {
  mkdirSync(folder, { recursive: true });
  await page.setViewportSize({ width, height: 1000 });
  await page.waitForTimeout(300);
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  const cells = await page.locator('main .cells > *').all();
  for (const [i, cell] of cells.entries()) {
    if (await cell.isVisible()) await cell.screenshot({ path: join(folder, `${name}-cell-${i + 1}.png`) });
  }
}
