import { mkdirSync, writeFileSync } from 'node:fs';
import { inProject } from '../../src/setup/paths.js';
import { beginStudies, openExample, tellComplaints, waitForPours } from './shownSite.js';

/** @typedef {import('playwright-core').Page} Page */
/**
 * One picture of the user guide: the example book it opens, the cell it shows, what a hand does before it is taken,
 * how much of the cell is shown and how much paper round it [px].
 * @typedef {{ name: string, book: string, cell?: string, dialog?: boolean, only?: string, margin?: number, tall?: number, act?: (page: Page) => Promise<unknown> }} Picture
 */

const WIDTH = 1280;
/** No picture weighs more [bytes]. */
const HEAVIEST = 120_000;
const QUALITIES = [86, 78, 70, 60, 50];

/** @type {readonly Picture[]} */
const PICTURES = [
  { name: 'first-view', book: 'level-or-uphill', tall: 860 },
  { name: 'keys', book: 'level-or-uphill', dialog: true, act: (page) => page.keyboard.press('F4') },
  { name: 'compare', book: 'level-or-uphill', cell: 'three-starts', tall: 1150 },
  { name: 'shop-card', book: 'level-or-uphill', cell: 'card', only: '.paper .shop-card', margin: 12 },
  { name: 'charge-with-ladling', book: 'level-or-uphill', cell: 'to-the-lip', act: countLadling },
  { name: 'section-dragged', book: 'level-or-uphill', cell: 'sill-basin', tall: 980, act: dragCorner },
  { name: 'staged-tilt', book: 'two-tilts', cell: 'staged', tall: 760 },
  { name: 'pour-with-folds', book: 'two-tilts', cell: 'pour-quick', tall: 1080 },
  { name: 'pour-window', book: 'pour-window', cell: 'window', tall: 900 },
  { name: 'castings-log', book: 'castings-log', cell: 'log', tall: 1000 },
  { name: 'machine', book: 'setting-the-damper', cell: 'open', tall: 900 },
  { name: 'guess-first', book: 'class-oxide-film', cell: 'guess-gentle', act: drawGuess },
];

/**
 * Makes every picture of the guide anew, in docs/pictures.
 * @param {import('playwright-core').Browser} browser @param {string} address
 */
export async function takeGuidePictures(browser, address) {
  mkdirSync(inProject('docs/pictures'), { recursive: true });
  const only = process.env['PICTURES']?.split(',');
  const wanted = PICTURES.filter(({ name }) => !only || only.includes(name));
  for (const book of new Set(wanted.map((picture) => picture.book))) {
    const viewport = { width: WIDTH, height: 1600 };
    const context = await browser.newContext({ colorScheme: 'light', reducedMotion: 'reduce', viewport });
    const page = await context.newPage();
    tellComplaints(page, book);
    await page.goto(address);
    await openExample(page, `${book}.pourbook.json`);
    for (const picture of wanted.filter((one) => one.book === book)) await take(page, picture);
    await context.close();
  }
}

/** @param {Page} page @param {Picture} picture */
async function take(page, picture) {
  const shown = picture.dialog ? page.locator('dialog[open]') : shownPart(page, picture);
  // Once before and once after: the cells above grow as they are drawn.
  await scrollTo(page, picture);
  if (picture.cell) await beginStudies(page.locator(`[id="${picture.cell}"]`));
  await waitForPours(page);
  await scrollTo(page, picture);
  await picture.act?.(page);
  // What an action has set going.
  if (picture.act !== dragCorner) await waitForPours(page);
  const box = await shown.boundingBox();
  if (!box) throw new Error(`${picture.name} is not shown.`);
  const { margin = 0, tall = box.height } = picture;
  const bytes = await lightEnough(page, {
    x: box.x - margin,
    y: box.y - margin,
    width: box.width + 2 * margin,
    height: Math.min(box.height, tall) + 2 * margin,
  });
  writeFileSync(inProject(`docs/pictures/${picture.name}.jpg`), bytes);
  console.log(`docs/pictures/${picture.name}.jpg ${Math.round(bytes.length / 1000)} kB`);
  if (picture.dialog) await page.keyboard.press('Escape');
  await page.mouse.up();
}

/** @param {Page} page @param {Picture} picture */
async function scrollTo(page, { cell }) {
  if (cell) await page.locator(`[id="${cell}"]`).evaluate((shown) => shown.scrollIntoView());
}

/** @param {Page} page @param {Picture} picture */
function shownPart(page, { cell, only }) {
  if (!cell) return page.locator('body');
  const whole = page.locator(`[id="${cell}"]`);
  return only ? whole.locator(only).first() : whole;
}

/** @param {Page} page @param {{ x: number, y: number, width: number, height: number }} clip */
async function lightEnough(page, clip) {
  for (const quality of QUALITIES) {
    const bytes = await page.screenshot({ type: 'jpeg', quality, clip });
    if (bytes.length <= HEAVIEST) return bytes;
  }
  throw new Error(`A picture of ${clip.width} × ${clip.height} is too heavy: show less of the cell.`);
}

/** @param {Page} page */
function countLadling(page) {
  return page.locator('[id="to-the-lip"]').getByText('count ladling and the wait in the basin').click();
}

/** Takes a corner of the roof, and holds it while the picture is taken. @param {Page} page */
async function dragCorner(page) {
  const cell = page.locator('[id="sill-basin"]');
  const corner = await cell.getByRole('slider', { name: /^R3/ }).boundingBox();
  if (!corner) throw new Error('The corner is not drawn.');
  const [x, y] = [corner.x + corner.width / 2, corner.y + corner.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 10; step++) await page.mouse.move(x, y - 4 * step);
  await cell.locator('[data-part="live front"]').getByText('sketch', { exact: true }).waitFor();
}

/** A front that quickens towards the end, drawn across the chart; not the answer. @param {Page} page */
async function drawGuess(page) {
  const points = await page.locator('[id="guess-gentle"]').getByRole('slider').all();
  for (const [index, point] of points.entries()) {
    const box = await point.boundingBox();
    if (!box) throw new Error('A point of the guess is not drawn.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    if (index === 0) {
      await page.mouse.move(x, y);
      await page.mouse.down();
    }
    await page.mouse.move(x, y + 20 - (65 * index) / points.length);
  }
  await page.mouse.up();
}
