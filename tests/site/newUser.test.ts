import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell, replaceCell } from '$src/cells/edit';
import type { Book, Cell, CellKind } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { hingeArm } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';
import { thinWallWindow } from '../books/sources/thinWall';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** What somebody stumbles over who has not seen the page before. */

const openBook = useOnePage();
const MINUS = '\u2212';

const sample = sampleBook();
const only = (kinds: readonly CellKind[]): Book => ({
  ...sample,
  cells: sample.cells.filter(({ kind }) => kinds.includes(kind)),
});
/** A drawing and what fills it; nothing is poured. */
const drawn = only(['section', 'metal', 'tilt', 'charge']);

const digitsOf = async (field: Locator): Promise<string> => (await field.inputValue()).split('.')[1] ?? '';

test('a charge told another way comes in steps a shop can set, and back again is what was typed', async () => {
  const page = await openBook(writeBook(drawn));
  const charge = page.locator('[data-kind="charge"]');
  const by = (name: string) => charge.getByRole('radio', { name, exact: true }).check({ force: true });
  await by('mass');
  const mass = charge.getByRole('textbox', { name: 'mass' });
  expect((await digitsOf(mass)).length).toBeLessThanOrEqual(3);
  await mass.fill('0.7123');
  await mass.blur();
  await by('fill level');
  const level = charge.getByRole('textbox', { name: /^level from the lip/ });
  expect(await digitsOf(level)).toHaveLength(1);
  await by('head wanted');
  expect(await digitsOf(charge.getByRole('textbox', { name: /^head above/ }))).toHaveLength(1);
  await picture(page, 'charge-told-another-way');
  await by('mass');
  expect(await mass.inputValue()).toBe('0.7123');
  await page.getByRole('combobox', { name: 'Unit of length' }).selectOption('in');
  await by('fill level');
  expect((await digitsOf(level)).length).toBeLessThanOrEqual(3);
});

test('a basin too short to ladle into is refused beside its field, and the outline stays', async () => {
  const page = await openBook(writeBook(drawn));
  const section = page.locator('[data-kind="section"]');
  const length = section.getByRole('textbox', { name: /^basin length/ });
  const before = await length.inputValue();
  await length.fill('70');
  await section.getByText(/mm of the basin open, too little to ladle into/).waitFor();
  await section.getByText(/or move the roof's rim R\d towards the mouth first/).waitFor();
  await picture(page, 'basin-too-short');
  await length.press('Escape');
  expect(await length.inputValue()).toBe(before);
});

const HINGE_ARM: Book = replaceCell(drawn, { ...firstOf(drawn, 'section'), section: hingeArm() });

test('a die is made longer and higher by one number each, as a whole or one region of it, and one step back undoes it', async () => {
  const page = await openBook(writeBook(HINGE_ARM));
  const section = page.locator('[data-kind="section"]');
  const field = (name: string | RegExp) => section.getByRole('textbox', { name });
  const length = field('die length, mouth to end');
  await section.getByText('stretches or shortens the die between 180 and 320 mm').waitFor();
  expect(await length.inputValue()).toBe('230.0');
  await length.press('ControlOrMeta+a');
  await length.pressSequentially('250');
  await length.press('Enter');
  // The arm has become longer; feeder end and boss are as long as before.
  await expect.poll(() => field('end of Arm').inputValue()).toBe('340.0');
  expect(await field('end of Feeder end').inputValue()).toBe('180.0');
  expect(await field('F2 x, mm').inputValue()).toBe('380.0');
  expect(await field('place of vent 1, mm').inputValue()).toBe('380.0');
  await picture(page, 'die-longer');
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect.poll(() => length.inputValue()).toBe('230.0');
  expect(await field('end of Arm').inputValue()).toBe('320.0');

  await section.getByRole('combobox', { name: 'length and height of' }).selectOption('Boss');
  const height = field('its height, where it is highest');
  expect(await height.inputValue()).toBe('28.0');
  await height.fill('31');
  await height.press('Enter');
  await expect.poll(() => field('R8 y, mm').inputValue()).toBe('31.0');
  expect(await field('R6 y, mm').inputValue()).toBe('10.0');
  await section.getByRole('combobox', { name: 'length and height of' }).selectOption('Arm');
  await height.fill('14.125');
  await height.press('Enter');
  expect(await height.inputValue()).toBe('14.125');
  await expect.poll(() => field('R6 y, mm').inputValue()).toBe('10.125');
  await section.getByRole('combobox', { name: 'length and height of' }).selectOption('the whole die');
  await field('die height, where it is highest').fill('20');
  await section.getByText(/^At 20 mm the roof would come down to the floor/).waitFor();
  await picture(page, 'die-too-low');
});

test('what is wrong in a section is told beside its number, in the list at the top only where there is none', async () => {
  const page = await openBook(writeBook(HINGE_ARM));
  const section = page.locator('[data-kind="section"]');
  const corner = section.getByRole('textbox', { name: 'R5 x, mm' });
  await corner.fill('60');
  await corner.press('Enter');
  await section.getByText('R5 lies 120 mm behind R4').first().waitFor();
  const box = section.locator('div.wrong');
  expect(await box.textContent()).not.toContain('R5 lies');
  const told = section.locator('table').getByText('R5 lies 120 mm behind R4');
  const [at, by] = [(await told.boundingBox())!, (await corner.boundingBox())!];
  expect(Math.abs(at.y - by.y)).toBeLessThan(120);
  await box.getByRole('button', { name: 'Go to the number' }).click();
  expect(await corner.evaluate((node) => node === document.activeElement)).toBe(true);
  for (const width of [1440, 390]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await picture(page, `section-wrong-${width}`);
  }
  const read = firstOf(HINGE_ARM, 'section');
  const regions = read.section.regions.map((one, i) => (i === 3 ? { ...one, end: 0.3 } : one));
  const shorter = await openBook(
    writeBook(replaceCell(HINGE_ARM, { ...read, section: { ...read.section, regions } })),
  );
  await shorter
    .locator('[data-kind="section"] div.wrong')
    .getByText(/^Region Boss ends at|^The last region, Boss/)
    .waitFor();
});

test('the heat transfer of a coat of the list is shown to two figures, one that is typed as typed', async () => {
  const page = await openBook(writeBook(drawn));
  const section = page.locator('[data-kind="section"]');
  const transfer = section.getByRole('textbox', { name: /^heat transfer of/ }).first();
  await section
    .getByRole('combobox', { name: /^coat of/ })
    .first()
    .selectOption('Normal insulating');
  expect(await transfer.inputValue()).toBe('1800');
  await transfer.fill('1846');
  await transfer.press('Enter');
  expect(await transfer.inputValue()).toBe('1846');
  await transfer.fill('1873');
  await transfer.press('Enter');
  expect(await transfer.inputValue()).toBe('1873');
  await section
    .getByRole('combobox', { name: /^coat of/ })
    .first()
    .selectOption('Thin insulating');
  await expect.poll(() => transfer.inputValue()).toBe('4800');
  await transfer.press('ArrowUp');
  expect(await transfer.inputValue()).toBe('4850');
});

test('the button that adds a point says where, the point comes there, has the focus and is said', async () => {
  const page = await openBook(writeBook(HINGE_ARM));
  const section = page.locator('[data-kind="section"]');
  const add = section.getByRole('button', { name: /^Add a point/ });
  await section.getByRole('slider', { name: /^R4,/ }).waitFor();
  // Nothing is chosen yet.
  expect(await add.textContent()).toBe('Add a point between F1 and F2');
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  const said = page.getByText(/^Point F2 added midway between F1 and F3/);
  await add.click();
  await expect.poll(focused).toMatch(/^F2, /);
  await expect.poll(() => said.count()).toBe(1);
  const field = section.getByRole('textbox', { name: 'F2 y, mm' });
  expect(await field.inputValue()).toBe('0.0');
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => field.inputValue()).toBe(`${MINUS}1.0`);
  await picture(page, 'point-added');

  await section.getByRole('slider', { name: /^R4,/ }).focus();
  await expect.poll(() => add.textContent()).toBe('Add a point between R4 and R5');
  await add.press('Enter');
  await expect.poll(focused).toMatch(/^R5, /);
  await page
    .getByRole('button', { name: /^Undo: / })
    .first()
    .click();
  await expect.poll(() => section.getByRole('slider', { name: /^R9,/ }).count()).toBe(0);
});

test('a tapered lever is among the starting shapes: it narrows from its mouth to its end, in height and in width', async () => {
  const page = await openBook(writeBook(HINGE_ARM));
  const section = page.locator('[data-kind="section"]');
  await section.getByRole('button', { name: 'Starting shapes' }).click();
  await section.getByRole('button', { name: /^tapered lever/ }).click();
  const field = (name: string | RegExp) => section.getByRole('textbox', { name });
  await expect.poll(() => field('name of region 2').inputValue()).toBe('Lever');
  expect(await field('R5 y, mm').inputValue()).toBe('34.0');
  expect(await field('R6 y, mm').inputValue()).toBe('14.0');
  expect(await field('width of Lever').first().inputValue()).toBe('60.0');
  expect(await field(/^width of Lever where it ends/).inputValue()).toBe('36.0');
  // By hand: 180/6·(2·60·34 + 60·14 + 36·34 + 2·36·14) mm³.
  await expect.poll(() => section.getByText('cavity volume').locator('..').textContent()).toMatch(/215/);
  expect(await section.locator('div.wrong').count()).toBe(0);
  for (const width of [1440, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await picture(page, `tapered-lever-${width}`);
  }
});

/** Whether all words of a field are within it. */
const isWhole = (field: Locator): Promise<boolean> =>
  field.evaluate((node) => node.scrollWidth <= node.clientWidth && node.scrollHeight <= node.clientHeight);

test('a long name of a region is read whole in its field, on a wide and on a narrow page', async () => {
  const name = 'Runner behind the sill, with a slow taper';
  const cell = firstOf(drawn, 'section');
  const regions = cell.section.regions.map((region, index) =>
    index === 0 ? { ...region, name: name.slice(0, 40) } : region,
  );
  const page = await openBook(
    writeBook(replaceCell(drawn, { ...cell, section: { ...cell.section, regions } })),
  );
  const field = page.getByRole('textbox', { name: 'name of region 1' });
  for (const width of [1440, 1024, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await expect.poll(() => isWhole(field)).toBe(true);
    await picture(page, `region-name-${width}`);
  }
  await field.fill('Basin');
  await field.press('Enter');
  expect(await field.inputValue()).toBe('Basin');
});

/** A comparison of so many pours, poured coarsely. */
function comparison(count: number): Book {
  const computation = { ...firstOf(sample, 'pour').computation, meshCells: 60 };
  const coarse: Book = {
    ...sample,
    cells: sample.cells.map((cell): Cell => (cell.kind === 'pour' ? { ...cell, computation } : cell)),
  };
  let book = coarse;
  while (book.cells.filter(({ kind }) => kind === 'pour').length < count) {
    const pour = newCell('pour', book);
    if (pour.kind !== 'pour') throw new Error('A new pour is a pour.');
    book = addCell(book, { ...pour, computation });
  }
  const pours = book.cells.flatMap((cell) => (cell.kind === 'pour' ? [cell.id] : []));
  return replaceCell(book, { ...firstOf(book, 'compare'), pours });
}

/** Left edges of the columns of one of the two tables [px]. */
const columnsOf = (page: Page, table: string): Promise<number[]> =>
  page
    .locator(`[data-table="${table}"] thead th`)
    .evaluateAll((heads) => heads.map((head) => Math.round(head.getBoundingClientRect().left)));

test.each([2, 3])(
  'the two tables of a comparison of %d share their columns where they stand under each other',
  async (count) => {
    const page = await openBook(writeBook(comparison(count)));
    await waitUntilFresh(page);
    for (const width of count === 2 ? [1024, 390] : [1440, 1024, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await page.locator('[data-table="figures"]').scrollIntoViewIfNeeded();
      const columns = await columnsOf(page, 'inputs');
      expect((await columnsOf(page, 'figures')).slice(0, columns.length)).toEqual(columns);
      await picture(page, `compare-${count}-${width}`);
    }
  },
);

/** The pour of a 4 mm wall, sound as it is set, with a small window around it and a card; all on the coarsest mesh. */
function soundBook(): Book {
  const axes = [
    { setting: 'tilt.time', from: 3, to: 27, points: 5 },
    { setting: 'tilt.start', from: 0, to: fromDegrees(40), points: 5 },
  ];
  const cells = thinWallWindow.cells
    .filter(({ kind, id }) => kind !== 'note' && (kind !== 'study' || id === 'window'))
    .map((cell): Cell => {
      if (cell.kind === 'pour') return { ...cell, computation: { ...cell.computation, meshCells: 40 } };
      return cell.kind === 'study' ? { ...cell, study: { ...cell.study, axes, meshCells: 40 } } : cell;
    });
  const book = { ...thinWallWindow, cells };
  const card = newCell('shop card', book);
  if (card.kind !== 'shop card') throw new Error('A new card is a card.');
  return addCell(book, { ...card, pour: 'pour' });
}

test('settings tried a little off just after a number was typed are those of the pour as it now stands', async () => {
  const page = await openBook(writeBook(soundBook()));
  const pour = page.locator('[data-kind="pour"]');
  await pour.locator('[data-verdict="sound"]').waitFor();
  const edge = pour.locator('[data-part="nearest edge"]');
  await edge.getByText('has not been looked at').waitFor();
  const rate = page.locator('[data-kind="tilt"]').getByLabel('rate', { exact: true });
  // Within one task of the page: the run of the new pour has not begun.
  await rate.evaluate((field: HTMLInputElement) => {
    field.value = '10.25';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    const buttons = [...document.querySelectorAll('button')];
    buttons.find(({ textContent }) => textContent === 'Try settings a little off')!.click();
  });
  const sure = pour.locator('[data-part="sensitivity"]');
  await sure.getByText(/^Peak front speed over all/).waitFor({ timeout: 60_000 });
  await page.locator('[data-kind="pour"][data-state="fresh"]').waitFor();
  expect(await sure.getByText('before its last change').count()).toBe(0);
  await edge
    .getByText(/^(No longer sound with|Still sound with all|On the coarse mesh)/)
    .waitFor({ timeout: 30_000 });
  // Back at the rate before, nothing has been asked.
  await rate.fill('12');
  await page.keyboard.press('Enter');
  await edge.getByText('has not been looked at').waitFor();
});

test('a sound pour says how near an unsound setting lies once it was looked at, and a card why it does not know', async () => {
  const page = await openBook(writeBook(soundBook()));
  const pour = page.locator('[data-kind="pour"]');
  await pour.locator('[data-verdict="sound"]').waitFor();
  const edge = pour.locator('[data-part="nearest edge"]');
  const card = page.locator('.paper .shop-card');
  await edge.getByText('has not been looked at').waitFor();
  await card.getByText('its study was not run').waitFor();
  await picture(page, 'edge-not-looked-at');
  await edge.getByRole('button', { name: 'Try settings a little off' }).click();
  await edge.getByText(/^(No longer sound with|Still sound with all)/).waitFor({ timeout: 60_000 });
  expect(await pour.locator('[data-part="sensitivity"] [data-variation]').count()).toBeGreaterThan(4);

  // A new name changes no figure, and neither does another visit.
  const found = (await edge.textContent())!;
  await pour.getByRole('textbox', { name: /^Name of/ }).fill('Another name');
  await page.keyboard.press('Enter');
  await page.locator('h1, h2').getByText('Another name').first().waitFor({ state: 'attached' });
  expect(await edge.textContent()).toBe(found);
  await page.waitForTimeout(1000);
  await page.reload();
  await expect.poll(() => edge.textContent(), { timeout: 30_000 }).toBe(found);
  expect(await pour.locator('[data-part="sensitivity"] [data-variation]').count()).toBeGreaterThan(4);

  const study = page.locator('[data-kind="study"]');
  await study.scrollIntoViewIfNeeded();
  await study.getByRole('button', { name: 'Pour this study' }).click();
  await expect
    .poll(() => study.getAttribute('data-state'), { timeout: 120_000, interval: 500 })
    .toBe('fresh');
  await edge
    .getByText(/sound to .*, by the study “Pour window of the wall”|; by the study “Pour window of the wall”/)
    .waitFor();
  await card
    .getByText(/^sound, /)
    .first()
    .waitFor();
  expect(await card.getByText('how far it may stray').count()).toBe(0);
  await picture(page, 'edge-known');
});

test('a fold that is chosen is shown below the picture: which, why, and a schematic that says it is one', async () => {
  const page = await openBook(writeBook(comparison(2)));
  await waitUntilFresh(page);
  const pour = page.locator('[data-kind="pour"]').first();
  await pour.scrollIntoViewIfNeeded();
  const now = pour.locator('[data-part="fold now"]');
  const rows = pour.locator('tr[data-fold]');
  await rows.first().waitFor({ state: 'attached' });
  const kinds = await rows.evaluateAll((all) => all.map((row) => row.getAttribute('data-fold')!));
  expect(kinds.length).toBeGreaterThan(0);
  for (const [index, kind] of kinds.entries()) {
    await rows.nth(index).getByRole('button').click();
    await expect.poll(() => now.getByRole('heading').textContent()).toMatch(new RegExp(`^ *\\d+ ${kind} `));
    await now.getByRole('img', { name: new RegExp(`^Schematic: ${kind}`) }).waitFor();
  }
  await now.getByText('Schematic, not to scale.').waitFor();
  await now.getByText(/how its skin then lay is not computed/i).waitFor();
  await picture(page, 'fold-now');
});
