import { readFileSync } from 'node:fs';
import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { MESH_CELLS_RANGE } from '$src/cells/checkComputation';
import { addCell } from '$src/cells/edit';
import type { Book, Cell } from '$src/cells/kinds';
import { withLimits } from '$src/cells/machineLimits';
import { newCell } from '$src/cells/newCell';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromDegrees } from '$src/core/units';
import { sampleBook } from '../book/sample';
import { betterTilt } from '../books/sources/betterTilt';
import { thinWallWindow } from '../books/sources/thinWall';
import { openBookFile } from './helpers/books';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();

/** A window of 6 × 6 points on the coarsest mesh there is, and pours as coarse, so that the page is soon done; its strokes are quick. */
function studyBook(points = 6, meshCells: number = MESH_CELLS_RANGE.least): Book {
  const sample = sampleBook();
  const computation = { meshCells, capillaryGate: true, settlingTime: 1 };
  const cells = sample.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  const tilts = cells.filter(({ kind }) => kind === 'tilt').map(({ id }) => id);
  const quick = withLimits({ ...sample, cells }, tilts, WIDEST_LIMITS);
  const study = newCell('study', quick);
  const pour = quick.cells.findLast(({ kind }) => kind === 'pour')!.id;
  if (study.kind !== 'study') throw new Error('A new study is a study.');
  const axes = [
    { setting: 'tilt.time', from: 1.5, to: 6, points },
    { setting: 'tilt.start', from: fromDegrees(10), to: fromDegrees(40), points },
  ];
  return addCell(quick, { ...study, pour, study: { ...study.study, axes, meshCells } });
}

/** What is kept of a study is looked up once it has been seen; what is drawn above it may push it away again. */
const stateInView = async (study: Locator): Promise<string | null> => {
  await study.scrollIntoViewIfNeeded();
  return study.getAttribute('data-state');
};

const stateTold = (study: Locator): Promise<string | null> => study.locator('.strip .state').textContent();

/** Waits for a part of a study that comes once the study has been seen. */
async function seen(study: Locator, part: Locator): Promise<void> {
  const look = async () => {
    await study.scrollIntoViewIfNeeded();
    return part.isVisible();
  };
  await expect.poll(look, { timeout: 30_000 }).toBe(true);
}

/** Presses what begins a study, once it is offered, and waits for its end. Gives all that its headline said meanwhile, and at last. */
async function pourStudy(study: Locator): Promise<{ meanwhile: readonly string[]; last: string }> {
  const begin = study.getByRole('button', { name: 'Pour this study' });
  await seen(study, begin);
  const told = await study.evaluateHandle((cell) => {
    const meanwhile: string[] = [];
    new MutationObserver(() => {
      const text = cell.querySelector('.verdict')?.textContent?.trim();
      if (text && cell.getAttribute('data-state') === 'running') meanwhile.push(text);
    }).observe(cell, { subtree: true, childList: true, characterData: true });
    return meanwhile;
  });
  await begin.click();
  await expect.poll(() => stateInView(study), { timeout: 120_000, interval: 500 }).toBe('fresh');
  return {
    meanwhile: await told.jsonValue(),
    last: (await study.locator('.verdict').first().textContent())!.trim(),
  };
}

test('a study that is out of date is there again as it was when the page is loaded anew', async () => {
  const page = await openPage({ book: writeBook(studyBook(3)) });
  const study = page.locator('[data-kind="study"]');
  await study.scrollIntoViewIfNeeded();
  expect(await stateTold(study)).toBe('not begun');
  await pourStudy(study);
  const map = () => study.getByRole('img', { name: /^Map of/ }).getAttribute('aria-label');
  const computed = await map();
  await study.getByText('What this study varies, and how far').click();
  await study.getByLabel('to', { exact: true }).first().fill('7');
  await page.keyboard.press('Enter');
  await expect.poll(() => stateInView(study)).toBe('out of date');
  await page.getByText(/^on this machine/).waitFor();
  await page.reload();
  await page.locator('[data-kind="pour"][data-state="fresh"]').nth(1).waitFor();
  await seen(study, study.getByText(/^What is shown is the study as it was\./));
  expect(await map()).toBe(computed);
  expect(await stateInView(study)).toBe('out of date');
  await picture(page, 'study-as-it-was');
});

test('a pour window waits to be begun, is computed, told in words, shown again without running it, and its points open as pours', async () => {
  const page = await openPage({
    book: writeBook(studyBook()),
    expectedErrors: /Failed to load resource|ERR_FAILED/,
  });
  const study = page.locator('[data-kind="study"]');
  await study.scrollIntoViewIfNeeded();
  const offer = study.getByText(/^It takes 36 pours/);
  await seen(study, offer);
  expect(await stateInView(study)).toBe('waiting');
  expect(await study.getByRole('img', { name: /^Map of/ }).count()).toBe(0);
  const { meanwhile, last } = await pourStudy(study);
  // What is not all there yet is told as so far; the setting itself is computed first.
  expect(meanwhile.length).toBeGreaterThan(0);
  for (const text of meanwhile) expect(text).toMatch(/^(Being looked over\..*|So far:)/);
  expect(meanwhile.some((text) => text.includes('The setting itself: '))).toBe(true);
  expect(last).not.toMatch(/so far/i);
  await picture(page, 'study');
  const map = () =>
    study.getByRole('img', { name: /^Map of start angle against tilt time/ }).getAttribute('aria-label');
  const computed = await map();
  const counts = [...computed!.matchAll(/(\d+) points/g)].map(([, count]) => Number(count));
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(36);

  await page.context().route(/pour\.worker/, (route) => route.abort());
  await page.reload();
  // Saved before anybody came to the study, a page tells it all the same.
  await page.locator('[data-kind="pour"][data-state="fresh"]').nth(1).waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a page that plays' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  expect(saved.includes('Nothing of this study had been poured')).toBe(false);
  expect(saved.includes('Map of start angle against tilt time')).toBe(true);
  await study.scrollIntoViewIfNeeded();
  await expect.poll(() => stateInView(study), { timeout: 30_000 }).toBe('fresh');
  expect(await map()).toBe(computed);

  // Each hatch of the map is told in its key, and no two look alike; files have the name of the study.
  await seen(study, study.locator('svg.map'));
  const hatchesOf = (part: string) =>
    study
      .locator(part)
      .evaluateAll((drawn) =>
        [...new Set(drawn.map((one) => one.getAttribute('fill')!.replace(/^.*-/, '')))].sort(),
      );
  const onMap = await hatchesOf('svg.map path[fill^="url"]');
  expect(onMap.length).toBeGreaterThan(0);
  expect(await hatchesOf('figcaption rect[fill^="url"]')).toEqual(onMap);
  const patterns = await study
    .locator('svg.map pattern')
    .evaluateAll((all) => all.map((one) => `${one.innerHTML} ${one.getAttribute('patternTransform')}`));
  expect(new Set(patterns).size).toBe(patterns.length);
  const savingCsv = page.waitForEvent('download');
  await study.locator('summary', { hasText: 'Save map' }).click();
  await study.getByRole('button', { name: 'Save numbers as CSV' }).first().click();
  expect((await savingCsv).suggestedFilename()).toMatch(/^(?!pour-window\.|study\.).+-map\.csv$/);

  expect(await study.getByRole('combobox', { name: 'around the pour' }).isVisible()).toBe(true);
  await study.getByText('the map in words').click();
  await expect.poll(() => study.locator('tbody tr', { hasText: '1.5 s' }).count()).toBe(6);

  await study.getByRole('slider', { name: 'start angle' }).fill('2');
  await study.getByRole('slider', { name: 'tilt time' }).fill('5');
  await expect.poll(() => study.textContent()).toContain('6 s, +22°');
  const before = await page.locator('[data-kind="pour"]').count();
  await study.getByRole('button', { name: 'Open as a pour' }).click();
  await expect.poll(() => page.locator('[data-kind="pour"]').count()).toBe(before + 1);
  expect(await page.locator('[data-kind="tilt"]').count()).toBe(2);

  // A change leaves the old map in sight and pours nothing; a new study asks which of the two pours it varies.
  await study.getByText('What this study varies, and how far').click();
  await study.getByLabel('to', { exact: true }).first().fill('7');
  await page.keyboard.press('Enter');
  await expect.poll(() => stateInView(study)).toBe('out of date');
  await expect.poll(() => study.getByRole('button', { name: 'Pour it anew' }).isVisible()).toBe(true);
  expect(await map()).toBe(computed);
  await page.locator('#pick-study').click();
  const second = page.locator('[data-kind="study"]').nth(1);
  await expect.poll(() => second.textContent()).toContain('Which pour should it vary?');
  // The new cell at the foot of the book cannot be scrolled up, and yet it is the one at hand.
  const atHand = page.getByRole('navigation', { name: 'Contents' }).locator('[aria-current="location"]');
  await expect.poll(() => atHand.getAttribute('href')).toBe(`#${await second.getAttribute('id')}`);
  const around = second.getByRole('combobox', { name: 'around the pour' });
  expect(await around.inputValue()).toBe('');
  // Once the pour is chosen, what else is to be chosen stays open.
  const inputs = second.locator('details', { hasText: 'What this study varies' });
  await around.selectOption({ index: 1 });
  await expect.poll(() => second.getByText(/^It takes/).count()).toBe(1);
  expect(await inputs.evaluate((details: HTMLDetailsElement) => details.open)).toBe(true);
  expect(await seriousBarriers(page)).toEqual([]);
});

/** Pours that the page has begun, from its first moment on. */
const countPours = () => {
  const post = Worker.prototype.postMessage;
  Object.assign(globalThis, { begun: 0 });
  Worker.prototype.postMessage = function (this: Worker, ...sent: Parameters<typeof post>) {
    const [message] = sent;
    const isRun = message?.type === 'APPLY' && message.path?.join() === 'run';
    if (isRun) (globalThis as unknown as { begun: number }).begun += 1;
    post.apply(this, sent);
  } as typeof post;
};

test('a study goes with its cell and with its book: it pours no further, and shows nothing in another book', async () => {
  const page = await openPage({
    book: writeBook(studyBook(20)),
    prepare: async (context) => void (await context.addInitScript(countPours)),
  });
  const begun = () => page.evaluate(() => (globalThis as unknown as { begun: number }).begun);
  /** Pours begun in a second, once those under way are over. */
  const stillBegun = async (): Promise<number> => {
    await page.waitForTimeout(1000);
    const before = await begun();
    await page.waitForTimeout(1000);
    return (await begun()) - before;
  };
  const study = page.locator('[data-kind="study"]');
  const begin = study.getByRole('button', { name: /^(Pour this study|Go on)$/ });
  const beginIt = async () => {
    await seen(study, begin);
    const before = await begun();
    await begin.click();
    await expect.poll(begun, { timeout: 30_000 }).toBeGreaterThan(before + 1);
  };
  await study.scrollIntoViewIfNeeded();
  await beginIt();
  await study.getByRole('button', { name: /^More for/ }).click();
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
  await expect.poll(() => study.count()).toBe(0);
  expect(await stillBegun()).toBe(0);
  // What was poured is known when it is brought back.
  await page.getByRole('button', { name: /^Undo/ }).click();
  await beginIt();
  const other = { ...studyBook(20, MESH_CELLS_RANGE.least + 1), title: 'Another book' };
  await openBookFile(page, { name: 'another.pourbook.json', text: writeBook(other) });
  await expect.poll(() => page.title()).toContain('Another book');
  await seen(study, begin);
  expect(await stillBegun()).toBe(0);
  expect(await study.getByRole('img', { name: /^Map of/ }).count()).toBe(0);
});

test('where measured repeats land is drawn as a patch round the cross, and told', async () => {
  const book = studyBook();
  const measured = betterTilt.cells.find((cell) => cell.kind === 'tilt' && cell.tilt.kind === 'measured')!;
  const cells = book.cells.map((cell) => {
    if (cell.kind === 'tilt' && measured.kind === 'tilt') return { ...cell, tilt: measured.tilt };
    if (cell.kind !== 'study') return cell;
    const axes = cell.study.axes.map((axis) => ({ ...axis, points: 3 }));
    return { ...cell, study: { ...cell.study, axes } };
  });
  const page = await openPage({ book: writeBook({ ...book, cells }) });
  const study = page.locator('[data-kind="study"]');
  await pourStudy(study);
  expect(await study.textContent()).toContain('3 measured repeats land');
  const box = async (place: string) => (await study.locator(place).first().boundingBox())!;
  const [patch, cross] = [await box('svg.map .repeats-patch'), await box('svg.map circle.cross')];
  expect(patch.width).toBeGreaterThan(2);
  const middle = ({ x, width }: { x: number; width: number }) => x + width / 2;
  expect(Math.abs(middle(patch) - middle(cross))).toBeLessThan(2);

  // On a map from before a change the cross is no longer what is set.
  expect(await study.locator('svg.map').textContent()).toContain('set now');
  await study.getByText('What this study varies, and how far').click();
  await study.getByLabel('to', { exact: true }).first().fill('7');
  await page.keyboard.press('Enter');
  await expect.poll(() => study.locator('svg.map').textContent()).toContain('set before');
});

test('a study that is begun at once after typing takes what stands in the field', async () => {
  const book = studyBook(3);
  const page = await openPage({ book: writeBook(book) });
  const study = page.locator('[data-kind="study"]');
  const begin = study.getByRole('button', { name: 'Pour this study' });
  await seen(study, begin);
  const inputs = study.getByText('What this study varies, and how far');
  await inputs.click();
  const to = study.getByLabel('to', { exact: true }).first();
  /** Typed and pressed within one task of the page, far quicker than any rest of typing. */
  const typeAndPress = (value: string, name: string) =>
    to.evaluate(
      (field: HTMLInputElement, { value, name }) => {
        field.value = value;
        field.dispatchEvent(new Event('input', { bubbles: true }));
        return new Promise<void>((resolve) =>
          requestAnimationFrame(() => {
            const cell = field.closest('[data-kind="study"]')!;
            const button = [...cell.querySelectorAll('button')].find((one) => one.textContent === name)!;
            button.click();
            resolve();
          }),
        );
      },
      { value, name },
    );
  const ends = async () => {
    await expect.poll(() => stateInView(study), { timeout: 60_000, interval: 300 }).toBe('fresh');
    const slider = study.getByRole('slider', { name: 'tilt time' });
    await slider.fill('2');
    return slider.getAttribute('aria-valuetext');
  };
  await typeAndPress('8', 'Pour this study');
  expect(await ends()).toBe('8 s');
  await typeAndPress('9', 'Pour it anew');
  expect(await ends()).toBe('9 s');
});

/** The 4 mm wall with less metal than its feeder needs: a curve of five points and a map of 4 × 4, all on the coarsest mesh. */
function wallBook(): Book {
  const pace = { setting: 'tilt.time', from: 8, to: 20, points: 5 };
  const start = { setting: 'tilt.start', from: 0, to: fromDegrees(40), points: 4 };
  const cells = thinWallWindow.cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'pour') return [{ ...cell, computation: { ...cell.computation, meshCells: 40 } }];
    if (cell.kind === 'charge') return [{ ...cell, charge: { by: 'mass', mass: 0.46 } }];
    if (cell.kind !== 'study') return cell.kind === 'note' ? [] : [cell];
    if (cell.id !== 'window') return [];
    const study = { ...cell.study, repeatability: [], meshCells: 40 };
    const [curve, map] = [[pace], [{ ...pace, points: 4 }, start]];
    return [
      { ...cell, id: 'curve', name: 'Time alone', study: { ...study, axes: curve } },
      { ...cell, id: 'map', name: 'Time and start', study: { ...study, axes: map } },
    ];
  });
  return { ...thinWallWindow, cells };
}

test('a study of one setting has a verdict, a mark at each point and the pours of the book; a map rings what its feeder cannot feed', async () => {
  const page = await openPage({ book: writeBook(wallBook()) });
  const [curve, map] = [page.locator('[data-cell]#curve'), page.locator('[data-cell]#map')];
  await pourStudy(curve);
  // The headline takes the verdict of the pour's own mesh once that is there; the chart is drawn in its turn.
  const headline = () => curve.locator('.verdict').first().textContent();
  await expect
    .poll(async () => (await headline())?.trim(), { timeout: 60_000 })
    .toMatch(/^The setting fills quietly, but the feeder .* Tilt time [\d.]+\ss to [\d.]+\ss is sound\./);
  const marks = curve.locator('svg.chart-svg [data-mark]');
  await expect.poll(() => marks.count(), { timeout: 60_000 }).toBe(5);
  await curve.getByText('Margins of the set point').waitFor();
  const kinds = await marks.evaluateAll((all) => all.map((one) => one.getAttribute('data-mark')));
  expect(new Set(kinds)).toContain('feeder short');
  expect(kinds).not.toContain('sound');
  expect(await curve.getByText('fills quietly, feeder short').count()).toBe(1);
  await curve.getByText(/^in words and numbers/).click();
  const rows = curve
    .locator('table', { has: page.getByRole('columnheader', { name: 'feeder' }) })
    .locator('tbody tr');
  await expect.poll(() => rows.count()).toBe(5);
  expect(await rows.filter({ hasText: /sound.*short of metal/ }).count()).toBe(
    kinds.filter((kind) => kind === 'feeder short').length,
  );

  // The pour of the book, and one that is opened from a point.
  const crosses = curve.locator('svg.chart-svg [data-pour]');
  await expect.poll(() => crosses.count()).toBe(1);
  expect(await crosses.locator('circle').count()).toBe(1);
  await curve.getByRole('slider', { name: 'tilt time' }).fill('2');
  await curve.getByRole('button', { name: 'Open as a pour' }).click();
  await expect.poll(() => crosses.count(), { timeout: 60_000 }).toBe(2);
  expect(await crosses.locator('circle').count()).toBe(1);
  expect(await crosses.nth(1).textContent()).toMatch(/^\d+(\.\d+)? s$/);
  await curve.scrollIntoViewIfNeeded();
  await picture(page, 'study-curve');

  const savingPicture = page.waitForEvent('download');
  await curve.locator('summary', { hasText: /^Save front speed/ }).click();
  await curve.getByRole('button', { name: 'Save as SVG' }).first().click();
  const saved = await savingPicture;
  expect(saved.suggestedFilename()).toMatch(/^too-slow-is-cold.*-curve\.svg$/);
  const svg = readFileSync(await saved.path(), 'utf8');
  const drawnWords = [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, words]) => words).join(' ');
  for (const words of [
    'Too slow is cold',
    'Time alone',
    'section: ',
    'metal: ',
    'tilt: ',
    'fills quietly, feeder short',
    'laps',
  ])
    expect(drawnWords).toContain(words);
  const saving = page.waitForEvent('download');
  await curve.locator('summary', { hasText: /^Save front speed/ }).click();
  await curve.getByRole('button', { name: 'Save numbers as CSV' }).first().click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe(
    'too-slow-is-cold-the-pour-window-of-a-4-mm-wall-time-alone-curve.csv',
  );
  const [head, ...lines] = readFileSync(await file.path(), 'utf8')
    .trim()
    .split('\n');
  expect(head).toMatch(/^point,tilt_time_s,verdict,feeder,/);
  expect(lines.filter((line) => /,sound,the feeder is short/.test(line))).not.toHaveLength(0);

  await pourStudy(map);
  const picturedMap = map.locator('svg.map');
  expect(await picturedMap.getAttribute('aria-label')).toMatch(
    /The feeder is short at all of the \d+ computed pours/,
  );
  expect(await picturedMap.locator('path.feeder-rings').count()).toBe(1);
  await map.getByText('the die fills, but the feeder cannot feed the casting').waitFor();
  expect(await picturedMap.locator('text', { hasText: /^sound$/ }).count()).toBe(0);
  await map.getByText('the map in words').click();
  await map
    .getByText(/fills quietly, but the feeder is short of metal/)
    .first()
    .waitFor();
  await map.scrollIntoViewIfNeeded();
  await picture(page, 'study-feeder');
  expect(await seriousBarriers(page)).toEqual([]);
});
