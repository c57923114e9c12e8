import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell, replaceCell } from '$src/cells/edit';
import { inProject } from '../../src/setup/paths.js';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { coarseBook } from './helpers/coarseBook';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';

const openPage = useSite();

/** Words of the chart of front places that name a level fill. */
const levelNames = async (page: Page): Promise<string[]> => {
  const chart = page.locator('[data-kind="compare"]').getByRole('img', { name: /^front place/ });
  await chart.scrollIntoViewIfNeeded();
  const words = chart.locator('text');
  await expect
    .poll(async () => (await words.allTextContents()).some((one) => one.startsWith('level fill')))
    .toBe(true);
  return (await words.allTextContents()).filter((one) => one.startsWith('level fill'));
};

test('two pours of one section and charge share one level fill, named once; of two charges each is named after its pour', async () => {
  const shared = sampleBook();
  const page = await openPage({ book: coarseBook(writeBook(shared)) });
  await waitUntilFresh(page);
  expect(await levelNames(page)).toEqual(['level fill']);
  await picture(page, 'level-fill-shared');

  const { charge, ...given } = firstOf(shared, 'charge');
  const less = { ...given, id: 'charge-less', name: 'Less', charge: { by: 'mass' as const, mass: 0.5 } };
  expect(charge).toBeDefined();
  const pours = shared.cells.filter((cell) => cell.kind === 'pour');
  const book = addCell(replaceCell(shared, { ...pours[1]!, charge: less.id }), less, 0);
  const other = await openPage({ book: coarseBook(writeBook(book)) });
  await waitUntilFresh(other);
  expect((await levelNames(other)).toSorted()).toEqual(
    pours.map(({ name }) => `level fill, ${name}`).toSorted(),
  );
  for (const width of [1440, 390])
    for (const colorScheme of ['light', 'dark'] as const) {
      await other.setViewportSize({ width, height: 900 });
      await other.emulateMedia({ colorScheme });
      await picture(other, `level-fills-apart-${width}-${colorScheme}`);
    }
});

test('in a comparison the axis of folds spans what happened, and the rest is told', async () => {
  const book = coarseBook(readFileSync(inProject('static/level-or-uphill.pourbook.json'), 'utf8'));
  const page = await openPage({ book });
  await waitUntilFresh(page);
  const compare = page.locator('[data-kind="compare"]');
  await compare.scrollIntoViewIfNeeded();
  await compare.getByRole('radio', { name: 'inclination' }).check({ force: true });
  const strip = compare.getByRole('img', { name: /^Folds by inclination/ });
  await strip.waitFor();
  await strip.scrollIntoViewIfNeeded();
  await picture(page, 'fold-strip');
  const box = (await strip.boundingBox())!;
  const pins = await strip.locator('.pin-shape').evaluateAll((all) =>
    all.map((pin) => {
      const { left, width } = pin.getBoundingClientRect();
      return left + width / 2;
    }),
  );
  expect(pins.length).toBeGreaterThan(1);
  // The last fold stands in the right half, with a little left after it.
  expect(Math.max(...pins)).toBeGreaterThan(box.x + box.width / 2);
  expect(Math.max(...pins)).toBeLessThan(box.x + box.width - 20);
  expect(
    await compare.getByText(/^After .* nothing folds or fills any more; the pours go on to/).count(),
  ).toBe(1);
});
