import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Cell, ShopCardCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** Pours that ran once, and then get inputs that cannot be computed. */

const openBook = useOnePage();

const sample = sampleBook();
const pours = sample.cells.filter(({ kind }) => kind === 'pour').map(({ id }) => id);
const coarse = (cell: Cell): Cell =>
  cell.kind === 'pour' ? { ...cell, computation: { ...cell.computation, meshCells: 40 } } : cell;
const coarseSample = { ...sample, cells: sample.cells.map(coarse) };
const card: ShopCardCell = { ...(newCell('shop card', coarseSample) as ShopCardCell), pour: pours[0]! };
const book = addCell(coarseSample, card);
const charge = firstOf(book, 'charge');
const compare = firstOf(book, 'compare');

test('a pour whose inputs are wrong shows its last run as that, dimmed, and its shop card has no figures', async () => {
  const page = await openBook(writeBook(book));
  await waitUntilFresh(page);
  const pour = page.locator(`[id="${pours[0]}"]`);
  const paper = page.locator(`[id="${card.id}"] .paper`);
  const looksOf = () => pour.locator('.verdict').evaluate((node) => getComputedStyle(node).color);
  const fresh = await looksOf();
  const lastRun = pour.getByText('The last run, of inputs as they were before');
  expect(await lastRun.count()).toBe(0);
  expect(await paper.getByText('the model says').count()).toBe(1);

  const head = page.locator(`[id="${charge.id}"]`).getByRole('textbox', { name: /^head above the mouth/ });
  const before = await head.inputValue();
  await head.fill('900');
  await head.blur();
  await pour.getByText('No run.').waitFor();
  await pour.getByText(/^Below is the last run\. It is of inputs as they were before/).waitFor();
  await lastRun.waitFor();
  expect(await looksOf()).not.toBe(fresh);
  await paper.getByText('Do not pour by this card.').waitFor();
  const printed = (await paper.textContent())!;
  expect(printed).not.toMatch(/the model says|metal at the tilt|front speed|[Ss]ound/);
  expect(printed).toMatch(/It has no figures before that is put right/);
  await picture(page, 'wrong-pour');

  // Both pours take the charge.
  const told = page.locator(`[id="${compare.id}"] .wrong`);
  expect(await told.textContent()).toMatch(/^No run of .+ and .+\./);
  expect(await told.getByRole('link', { name: charge.name }).getAttribute('href')).toBe(`#${charge.id}`);
  expect(
    await page
      .locator(`[id="${compare.id}"]`)
      .getByText(/appear as soon as/)
      .count(),
  ).toBe(0);

  await head.fill(before);
  await head.blur();
  await waitUntilFresh(page);
  expect(await lastRun.count()).toBe(0);
  expect(await looksOf()).toBe(fresh);
  expect(await paper.getByText('the model says').count()).toBe(1);
  expect(await paper.getByText('Do not pour by this card.').count()).toBe(0);
});

test('a comparison of a pour that never could run says what is wrong, and waits for nothing', async () => {
  const cells = book.cells.map(
    (cell): Cell => (cell.id === pours[1] && cell.kind === 'pour' ? { ...cell, tilt: null } : cell),
  );
  const page = await openBook(writeBook({ ...book, cells }));
  const told = page.locator(`[id="${compare.id}"] .wrong`);
  await told.getByText('No tilt is chosen.').waitFor();
  const { name } = book.cells.find(({ id }) => id === pours[1])!;
  expect(await told.getByRole('link', { name, exact: true }).getAttribute('href')).toBe(`#${pours[1]}`);
  await expect
    .poll(() => page.locator(`[id="${pours[0]}"]`).getAttribute('data-state'), { timeout: 60_000 })
    .toBe('fresh');
  expect(
    await page
      .locator(`[id="${compare.id}"]`)
      .getByText(/Waits for|appear as soon as/)
      .count(),
  ).toBe(0);
});

test('a card whose pour is run anew is struck through and overprinted at once, on screen and on paper, and whole again after', async () => {
  const page = await openBook(writeBook(book));
  await waitUntilFresh(page);
  const paper = page.locator(`[id="${card.id}"] .paper`);
  const looks = () =>
    paper.locator('article').evaluate((article) => {
      const figure = getComputedStyle(article.querySelector('.settings td.big')!);
      const over = getComputedStyle(article, '::after');
      return {
        struck: figure.textDecorationLine,
        over: over.content,
        caution: getComputedStyle(article.querySelector('.before li')!).textDecorationLine,
      };
    });
  const valid = { struck: 'none', over: 'none', caution: 'none' };
  const invalid = { struck: 'line-through', over: '"not valid"', caution: 'none' };
  expect(await looks()).toEqual(valid);
  // On a mesh so fine that there is time to look.
  const pour = page.locator(`[id="${pours[0]}"]`);
  await pour.getByText('What this pour takes, and how it is computed').click();
  await pour
    .getByRole('radio', { name: '800' })
    .or(pour.getByRole('button', { name: '800', exact: true }))
    .first()
    .click();
  await paper.getByText('Do not pour by this card.').waitFor();
  expect(await looks()).toEqual(invalid);
  await page.emulateMedia({ media: 'print' });
  expect(await looks()).toEqual(invalid);
  await page.emulateMedia({ media: 'screen' });
  await paper.scrollIntoViewIfNeeded();
  await picture(page, 'card-not-valid');
  await page.setViewportSize({ width: 390, height: 844 });
  await picture(page, 'card-not-valid-390');
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.getByRole('button', { name: /^Undo: / }).click();
  await waitUntilFresh(page);
  expect(await looks()).toEqual(valid);
});
