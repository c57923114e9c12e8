/**
 * `npm run shots -- FOLDER`: pictures of the page with each example book, at three widths, light and dark:
 * the whole page, and each cell by itself. For looking at, not for comparing. BOOKS=NAME,NAME takes only those books.
 * `npm run shots -- guide`: the pictures of the user guide instead, made anew in docs/pictures.
 */
import { mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { inProject } from '../../src/setup/paths.js';
import { takeGuidePictures } from './guidePictures.js';
import { beginStudies, openExample, showSite, tellComplaints, waitForPours } from './shownSite.js';

const WIDTHS = [1440, 1024, 390];
const SCHEMES = /** @type {const} */ (['light', 'dark']);
const ENDING = '.pourbook.json';

const asked = process.argv[2] ?? 'shots';
const folder = resolve(process.env['INIT_CWD'] ?? '.', asked);
const only = process.env['BOOKS']?.split(',');

const { address, browser, close } = await showSite();
try {
  if (asked === 'guide') await takeGuidePictures(browser, address);
  else await photographBooks();
} finally {
  await close();
}

async function photographBooks() {
  const books = readdirSync(inProject('static')).filter((file) => file.endsWith(ENDING));
  for (const book of books.filter((file) => !only || only.includes(file.slice(0, -ENDING.length)))) {
    for (const scheme of SCHEMES) await photographBook(book, scheme);
  }
  console.log(folder);
}

/** @param {string} file @param {'light' | 'dark'} scheme */
async function photographBook(file, scheme) {
  const context = await browser.newContext({
    colorScheme: scheme,
    reducedMotion: 'reduce',
    viewport: { width: 1440, height: 1000 },
  });
  const page = await context.newPage();
  tellComplaints(page, `${file} ${scheme}`);
  await page.goto(address);
  await openExample(page, file);
  await lookAtEach(page);
  await waitForPours(page);
  for (const width of WIDTHS)
    await photograph(page, `${file.slice(0, -ENDING.length)}-${width}-${scheme}`, width);
  await context.close();
}

/** A study offers itself once it has been looked at. @param {import('playwright-core').Page} page */
async function lookAtEach(page) {
  for (const cell of await page.locator('main .cells > *').all()) {
    await cell.scrollIntoViewIfNeeded();
    await page.waitForTimeout(100);
    await beginStudies(cell);
  }
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
