import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { readBook } from '$src/book/readBook';
import { dxfFile, groups } from '../fromDrawing/dxfText';
import { openBookFile, saveBookFile } from './helpers/books';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openBook = useOnePage();
const PATIENCE = { timeout: 60_000 };

const example = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../static/${name}.pourbook.json`, import.meta.url)), 'utf8');

async function give(
  page: Page,
  button: Locator,
  file: { name: string; mimeType: string; buffer: Buffer },
): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await button.click();
  await (await chooser).setFiles(file);
}

test('a student draws, picks, and only then sees the result', PATIENCE, async () => {
  const page = await openBook(example('class-oxide-film'));
  const pour = page.locator('#gentle');
  await expect.poll(() => pour.textContent(), PATIENCE).toContain('The result is hidden.');
  const section = page.locator('#flush-basin');
  expect(await section.getByText('What it does to').count()).toBe(0);

  const guess = page.locator('#guess-gentle');
  const show = guess.getByRole('button', { name: 'Give the guess and see the result' });
  expect(await show.isDisabled()).toBe(true);
  await guess.getByText('Draw your guess above first.').waitFor();
  const last = page.locator('#what-it-means');
  const unfold = last.getByRole('button', { name: /^Show this note/ });
  expect(await unfold.getAttribute('aria-expanded')).toBe('false');
  await unfold.press('Enter');
  await last.getByText('the slider under its picture').waitFor();
  await last.getByRole('button', { name: /^Hide the body of/ }).press('Enter');
  expect(await last.getByText('the slider under its picture').count()).toBe(0);
  const points = guess.getByRole('slider');
  expect(await points.count()).toBe(7);
  await points.last().focus();
  for (let press = 0; press < 3; press++) await page.keyboard.press('Shift+ArrowUp');
  expect(await points.last().getAttribute('aria-valuetext')).toBe('0.54 m/s');
  await show.click();
  await expect
    .poll(() => guess.textContent(), PATIENCE)
    .toContain('You drew a peak of 0.54 m/s; the computed one is 0.36 m/s');
  await expect.poll(() => pour.textContent(), PATIENCE).not.toContain('hidden');
  await expect.poll(() => pour.locator('[data-verdict]').count(), PATIENCE).toBe(1);

  const choice = page.locator('#guess-falling');
  await choice.getByText('stays under critical speed').click();
  await choice.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await expect.poll(() => choice.textContent(), PATIENCE).toContain('Not as computed.');
  await last.getByText('the slider under its picture').waitFor();
  await choice.getByText('For the teacher: what is asked').click();
  expect(await choice.getByRole('textbox', { name: 'question' }).isDisabled()).toBe(true);
  await picture(page, 'lesson');
  expect(await seriousBarriers(page)).toEqual([]);

  const tilt = page.locator('#uphill');
  await tilt.getByRole('button', { name: /^More for/ }).click();
  await tilt.getByRole('button', { name: /^Lock its inputs/ }).click();
  await expect
    .poll(() => tilt.getByRole('textbox', { name: /^Name of this tilt/ }).getAttribute('readonly'))
    .not.toBeNull();
  const saved = readBook(await saveBookFile(page));
  if ('issues' in saved) throw new Error(JSON.stringify(saved.issues));
  const kept = saved.book.cells.flatMap((cell) =>
    cell.kind === 'guess' ? [[cell.given, cell.picked, cell.drawn.length]] : [],
  );
  expect(kept).toEqual([
    [true, null, 7],
    [true, 'under', 0],
  ]);
  expect(saved.book.cells.find(({ id }) => id === 'uphill')?.locked).toBe(true);
});

test('a question of the teacher’s own says whose its answer is, and lets out the note that waits for it', async () => {
  const page = await openBook(example('class-uphill'));
  const note = page.locator('#what-it-means');
  const guess = page.locator('#guess-why');
  await guess.scrollIntoViewIfNeeded();
  await guess.getByRole('radio', { name: /^The sill cools/ }).waitFor();
  await note
    .getByText(/hidden/)
    .first()
    .waitFor();
  expect(await note.textContent()).not.toContain('Why not start steeper still?');
  await guess.getByRole('radio', { name: /^The sill cools/ }).check();
  await guess.getByRole('button', { name: /^Give the guess/ }).click();
  await expect.poll(() => guess.textContent()).toMatch(/teacher/i);
  expect(await guess.textContent()).toContain('Uphill the metal lies against the back wall');
  await note.getByText('Why not start steeper still?').waitFor();
  await picture(page, 'own-answer');
});

test(
  'a lesson saved as a page is told about where it is saved, and in it asks before it shows',
  PATIENCE,
  async () => {
    const page = await openBook(example('class-oxide-film'));
    const rail = page.getByRole('complementary', { name: 'Contents and tools' });
    const button = rail.getByRole('button', { name: 'Save as a page that plays' });
    await rail.getByText('Nobody can guess in the saved page').waitFor();
    for (const pour of ['#gentle', '#falling'])
      await expect.poll(() => page.locator(pour).getAttribute('data-state'), PATIENCE).toBe('hidden');
    const saving = page.waitForEvent('download');
    await button.click();
    const path = join(mkdtempSync(join(inject('profiles'), 'page-')), 'lesson.html');
    writeFileSync(path, readFileSync(await (await saving).path()));
    const said = page.locator('.saved');
    expect(await said.textContent()).toContain('Nobody can guess in the saved page');

    const saved = await page.context().newPage();
    await saved.goto(`file://${path}`);
    const section = (name: string) =>
      saved.locator('section', { has: saved.getByRole('heading', { name, exact: true }) });
    const name = await page.locator('#guess-falling h2').textContent();
    const guess = section(name!.replace(/, guess$/, ''));
    const told = guess.getByText('Computed:');
    await guess.getByText('Answer it first, then look.').waitFor();
    expect(await told.isVisible()).toBe(false);
    expect(await saved.locator('[data-replay]').first().isVisible()).toBe(false);
    await picture(saved, 'saved-lesson');
    await guess.getByText('Show what the pour did').press('Enter');
    await told.waitFor();
    await saved
      .getByRole('link', { name: name!.replace(/, guess$/, '') })
      .first()
      .click();
    expect(await guess.evaluate((node) => Math.abs(node.getBoundingClientRect().top) < 400)).toBe(true);
    expect(await seriousBarriers(saved)).toEqual([]);
    await saved.setViewportSize({ width: 390, height: 844 });
    expect(await saved.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await saved.emulateMedia({ colorScheme: 'dark' });
    await picture(saved, 'saved-lesson-phone');
    // On paper stands what was pressed, and of the rest the question alone.
    await saved.emulateMedia({ media: 'print' });
    expect(await told.isVisible()).toBe(true);
    expect(await saved.locator('[data-replay]').first().isVisible()).toBe(false);
    await saved.close();
  },
);

test('castings are set against the prediction, and come in and go out as CSV', PATIENCE, async () => {
  const page = await openBook(example('castings-log'));
  const log = page.locator('#log');
  await log.scrollIntoViewIfNeeded();
  await expect
    .poll(() => log.getByRole('heading', { level: 3 }).textContent(), PATIENCE)
    .toMatch(/^Scrap goes with the prediction\..*11 of 42/);
  // What was cast and nothing between: one row for each of the three pours.
  await log.getByText('in words and numbers').click();
  const numbers = log.getByRole('region', { name: 'Numbers of scrap, %' });
  await expect.poll(() => numbers.getByRole('row').count()).toBe(4);
  expect(await numbers.getByRole('row').nth(3).textContent()).toMatch(/11 of 42\s*26 %\s*15 to 41 %/);
  await log.getByRole('combobox', { name: 'castings counted as bad' }).selectOption('with lap or misrun');
  await expect
    .poll(() => log.getByRole('heading', { level: 3 }).textContent())
    .toMatch(/^Cannot be told apart\./);
  await page.setViewportSize({ width: 390, height: 900 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await page.setViewportSize({ width: 1440, height: 900 });
  await picture(page, 'castings');

  const text = 'date,pour,good,lap\nweek 4,The old way,40,12\nweek 5,The old way,x,1\n';
  await give(page, log.getByRole('button', { name: 'Read rows from CSV' }), {
    name: 'more.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  });
  await expect
    .poll(() => log.getByRole('status').textContent())
    .toMatch(/one row read from more\.csv.*Row 3 of the file: “x” in good/);
  expect(await log.getByRole('button', { name: /^Take out row/ }).count()).toBe(6);

  // A column that may count bad castings is asked about before any row is taken.
  await give(page, log.getByRole('button', { name: 'Read rows from CSV' }), {
    name: 'cracks.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('pour,good,fold or oxide,cracks\nThe old way,0,1,2\n'),
  });
  const ask = log.getByRole('form', { name: 'Columns not understood' });
  await ask.waitFor();
  expect(await log.getByRole('button', { name: /^Take out row/ }).count()).toBe(6);
  expect(await ask.getByRole('button', { name: 'Take the rows' }).isDisabled()).toBe(true);
  await ask.getByRole('combobox', { name: 'column cracks' }).selectOption('castings with other');
  await picture(page, 'castings-asked');
  await ask.getByRole('button', { name: 'Take the rows' }).click();
  await expect.poll(() => log.getByRole('status').textContent()).toMatch(/^one row read from cracks\.csv\.$/);
  expect(await log.getByRole('textbox', { name: 'fold or oxide, row 7' }).inputValue()).toBe('1');
  expect(await log.getByRole('textbox', { name: 'other, row 7' }).inputValue()).toBe('2');
  await log.getByRole('button', { name: 'Take out row 7' }).click();

  // A new row counts nothing before something is typed, and the answer stays.
  const before = await log.getByRole('heading', { level: 3 }).textContent();
  await log.getByRole('button', { name: 'Add a row' }).click();
  await log.getByText('Row 7 counts nothing until').waitFor();
  expect(await log.getByRole('textbox', { name: 'good, row 7' }).inputValue()).toBe('');
  expect(await log.getByRole('heading', { level: 3 }).textContent()).toBe(before);
  await picture(page, 'castings-row');
  await log.getByRole('textbox', { name: 'gas, row 7' }).fill('3');
  await expect.poll(() => log.getByText('Row 7 counts nothing until').count()).toBe(0);
  expect(await log.getByRole('textbox', { name: 'good, row 7' }).inputValue()).toBe('0');
  await log.getByRole('button', { name: 'Take out row 7' }).click();

  const saving = page.waitForEvent('download');
  await log.getByRole('button', { name: 'Save rows as CSV' }).click();
  const stream = await (await saving).createReadStream();
  const pieces: Buffer[] = [];
  for await (const piece of stream) pieces.push(piece as Buffer);
  const lines = Buffer.concat(pieces).toString('utf8').trim().split('\n');
  expect(lines).toHaveLength(7);
  expect(lines[6]).toBe('week 4,The old way,,,,,,40,0,12,0,0,0,');
});

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200">
<script>document.title = 'run'</script>
<path id="floor" d="M20 150H380"/><path id="roof" d="M20 50H120V110H380V125"/><path id="loop" d="M20 20H200L100 30H380"/></svg>`;
const svgFile = { name: 'die.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(SVG) };

/** A picture in grey and black, made in the page; gives the bytes of its file. */
const scan = async (): Promise<number[]> => {
  const canvas = new OffscreenCanvas(1440, 900);
  canvas.getContext('2d')!.fillRect(200, 200, 900, 300);
  return [...new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())];
};

const withFillets: readonly (readonly [number, number, number])[] = [
  [0, 0, 0],
  [355, 0, 0],
  [355, 22, Math.tan(Math.PI / 8)],
  [347, 30, 0],
  [123, 30, -Math.tan(Math.PI / 8)],
  [103, 50, 0],
  [103, 100, 0],
  [0, 100, 0],
];
const dxfLine = (layer: string, x: number, y: number, toX: number, toY: number): string =>
  groups([0, 'LINE'], [8, layer], [10, x], [20, y], [11, toX], [21, toY]);
const dxfOutline = groups(
  [0, 'LWPOLYLINE'],
  [8, 'cavity'],
  [90, withFillets.length],
  [70, 1],
  ...withFillets.flatMap(([x, y, bulge]) => [[10, x] as const, [20, y] as const, [42, bulge] as const]),
);
const dxfText = dxfFile(dxfLine('centre line', -10, 15, 380, 15) + dxfOutline);

/** The section of the book, asked for a drawing. */
async function sectionFromDrawing(page: Page): Promise<Locator> {
  const cell = page.locator('#pit-basin');
  await cell.getByRole('button', { name: 'Starting shapes' }).click();
  await cell.getByRole('button', { name: /^from a drawing/ }).click();
  return cell;
}

test(
  'a drawing names the layer and size of its outlines, and its fillets come with few points',
  PATIENCE,
  async () => {
    const page = await openBook(example('class-uphill'));
    const cell = await sectionFromDrawing(page);
    await give(page, cell.getByRole('button', { name: 'Choose a drawing' }), {
      name: 'arm.dxf',
      mimeType: 'image/vnd.dxf',
      buffer: Buffer.from(dxfText),
    });
    const outline = 'cavity: line 2, closed, 355 × 100 mm';
    for (const wall of ['floor', 'roof']) {
      const list = cell.getByRole('combobox', { name: wall });
      await list.waitFor();
      expect((await list.locator('option').allTextContents()).map((text) => text.trim())).toEqual([
        'centre line: line 1, open, 390 × 0 mm',
        outline,
      ]);
      await list.selectOption({ label: outline });
    }
    // Quarter circles of 8 and 20 mm: five and eight chords of a tenth of a millimetre, or one more, as the geometry of the circle has it.
    await cell.getByText('within 0.1 mm of what was drawn: 2 points of the floor, 18 of the roof.').waitFor();
    await picture(page, 'drawing-fillets');
    await cell.getByRole('button', { name: 'Take it as the section' }).click();
    await expect.poll(() => cell.getByRole('button', { name: 'Take it as the section' }).count()).toBe(0);
    const saved = readBook(await saveBookFile(page));
    if ('issues' in saved) throw new Error(JSON.stringify(saved.issues));
    const section = saved.book.cells.find(({ id }) => id === 'pit-basin');
    if (section?.kind !== 'section') throw new Error('No section.');
    expect(section.section.roof).toHaveLength(18);
    expect(section.section.mouth).toBeGreaterThan(0.103);
  },
);

test(
  'a section is taken from a drawing, and traced over a picture that the book keeps',
  PATIENCE,
  async () => {
    const page = await openBook(example('class-uphill'));
    const cell = await sectionFromDrawing(page);
    await give(page, cell.getByRole('button', { name: 'Choose a drawing' }), {
      ...svgFile,
      buffer: Buffer.from('<svg><path'),
    });
    await expect.poll(() => cell.getByRole('alert').textContent()).toContain('not readable as SVG');
    await give(page, cell.getByRole('button', { name: 'Choose a drawing' }), svgFile);
    const take = cell.getByRole('button', { name: 'Take it as the section' });
    await expect.poll(() => take.isEnabled()).toBe(true);
    await cell.getByRole('combobox', { name: 'floor' }).selectOption({ label: 'loop, open, 360 × 10 mm' });
    await expect.poll(() => cell.textContent()).toContain('“loop” runs back on itself');
    expect(await take.isDisabled()).toBe(true);
    await cell.getByRole('combobox', { name: 'floor' }).selectOption({ label: 'floor, open, 360 × 0 mm' });
    await picture(page, 'drawing');
    await take.click();
    await expect.poll(() => cell.getByRole('button', { name: 'Take it as the section' }).count()).toBe(0);
    expect(await page.title()).not.toContain('run');

    await cell.getByRole('button', { name: 'Starting shapes' }).click();
    await cell.getByRole('button', { name: /^over a picture/ }).click();
    await give(page, cell.getByRole('button', { name: 'Choose a picture' }), {
      name: 'no.png',
      mimeType: 'image/png',
      buffer: Buffer.from('no'),
    });
    await expect
      .poll(() => cell.getByRole('alert').textContent())
      .toContain('no.png cannot be used as a picture.');
    await give(page, cell.getByRole('button', { name: 'Choose a picture' }), {
      name: 'scan.png',
      mimeType: 'image/png',
      buffer: Buffer.from(await page.evaluate(scan)),
    });
    await expect.poll(() => cell.locator('svg image').count()).toBe(1);
    await cell.getByRole('slider', { name: 'mark A' }).focus();
    await page.keyboard.press('Shift+ArrowRight');
    // Where A is counted from, and what adds a point beside the picture, with the panel open.
    await cell.getByLabel(/^A along the die axis, from the back wall/).waitFor();
    const adders = cell.getByRole('button', { name: /^Add a point/ });
    expect(await adders.count()).toBe(2);
    const [panel, adder, drawing] = await Promise.all(
      [
        cell.getByRole('button', { name: 'Take the picture out' }),
        adders.last(),
        cell.locator('svg.traced'),
      ].map(async (one) => (await one.boundingBox())!.y),
    );
    expect([panel! < adder!, adder! < drawing!, drawing! - adder! < 120]).toEqual([true, true, true]);
    await picture(page, 'traced');
    expect(await seriousBarriers(page)).toEqual([]);

    const saved = readBook(await saveBookFile(page));
    if ('issues' in saved) throw new Error(JSON.stringify(saved.issues));
    const section = saved.book.cells.find(({ id }) => id === 'pit-basin');
    if (section?.kind !== 'section') throw new Error('No section.');
    expect(section.section.floor.at(-1)!.x).toBeCloseTo(0.36, 9);
    expect(section.section.roof).toHaveLength(4);
    expect(section.underlay!.image).toMatch(/^data:image\/jpeg;base64,/);
    expect(section.underlay!.marks[0].x).toBe(144 + 10);
  },
);

test(
  'an empty book says what makes a pour, and a pour that lacks its charge is put right under its guess',
  PATIENCE,
  async () => {
    const file = JSON.parse(example('class-oxide-film'));
    const page = await openBook(example('class-oxide-film'));
    await page.getByRole('button', { name: 'Begin a new book' }).click();
    await page.getByText('Nothing in this book yet.').waitFor();
    const cells = file.book.cells.map((cell: { id: string }) =>
      cell.id === 'gentle' ? { ...cell, charge: null } : cell,
    );
    const lacking = { ...file, book: { ...file.book, cells } };
    await openBookFile(page, { name: 'lacking.pourbook.json', text: JSON.stringify(lacking) });
    const pour = page.locator('#gentle');
    await pour.getByText('The result is hidden.').waitFor();
    await pour.getByText('No charge is chosen.').waitFor();
    await pour.getByRole('combobox', { name: 'charge' }).selectOption({ label: 'Behind the brink' });
    await expect.poll(() => pour.textContent(), PATIENCE).not.toContain('No charge is chosen.');
    expect(await pour.textContent()).toContain('The result is hidden.');
  },
);
