import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, PourCell, TiltCell } from '$src/cells/kinds';
import { type Box, meet } from '$src/report/drawing/box';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** A comparison of as many pours as are drawn. */

const openBook = useOnePage();

const COUNT = 8;
const NAMES = Array.from(
  { length: COUNT },
  (_, index) => `Hinge arm, poured from the uphill start, ${index + 1}th try`,
);

function bookOf(count: number): Book {
  const sample = sampleBook();
  const [tilt, pour, compare] = [
    firstOf(sample, 'tilt'),
    firstOf(sample, 'pour'),
    firstOf(sample, 'compare'),
  ];
  if (tilt.tilt.kind !== 'steady') throw new Error('A new tilt is steady.');
  const { rate } = tilt.tilt;
  const tilts = NAMES.slice(0, count).map(
    (name, index) =>
      ({
        ...tilt,
        id: `t${index}`,
        name,
        tilt: { ...tilt.tilt, rate: rate * (1 + 0.25 * index) },
      }) as TiltCell,
  );
  const pours = NAMES.slice(0, count).map(
    (name, index): PourCell => ({
      ...pour,
      id: `p${index}`,
      name,
      tilt: `t${index}`,
      computation: { ...pour.computation, meshCells: 40 },
    }),
  );
  // Measured against the third: it leads in key and tables.
  const order = pours.map(({ id }) => id);
  const chosen = count > 2 ? [order[2]!, ...order.filter((id) => id !== order[2])] : order;
  return {
    ...sample,
    title: `${count} pours`,
    cells: [
      { ...compare, pours: chosen },
      firstOf(sample, 'section'),
      firstOf(sample, 'metal'),
      { ...firstOf(sample, 'charge'), tilt: 't0' },
      ...tilts.map((cell) => ({ ...cell, folded: true })),
      ...pours.map((cell) => ({ ...cell, folded: true })),
    ],
  };
}
const IN_ORDER = [NAMES[2]!, ...NAMES.filter((name) => name !== NAMES[2])];

/** The labels at the lines of a chart: what they say, whose they are, and where [px]. */
const labelsOf = (page: Page, chart: number) =>
  page
    .locator('[data-kind="compare"] .pair figure')
    .nth(chart)
    .evaluate((figure) =>
      [...figure.querySelectorAll('text.run-label')].map((text) => {
        const { left, right, top, bottom } = text.getBoundingClientRect();
        const name = text.querySelector('title')?.textContent ?? '';
        return {
          text: [...text.childNodes]
            .filter((node) => node.nodeType === 3)
            .map((node) => node.textContent)
            .join(''),
          name,
          box: { left, right, top, bottom },
        };
      }),
    );

/** A line of letters has room above and below them in its box: two pixels at least in every browser. */
const lettersOf = ({ top, bottom, ...sides }: Box): Box => ({ ...sides, top: top + 2, bottom: bottom - 2 });

function apart(labels: readonly { readonly text: string; readonly box: Box }[]): void {
  labels.forEach((label, index) => {
    for (const other of labels.slice(index + 1))
      expect(meet(lettersOf(label.box), lettersOf(other.box)), `${label.text} on ${other.text}`).toBe(false);
  });
}

test('eight pours: each line is labelled, no label lies on another, and key and tables keep one order', async () => {
  const page = await openBook(writeBook(bookOf(COUNT)));
  await waitUntilFresh(page);
  const compare = page.locator('[data-kind="compare"]');
  for (const width of [1440, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await compare.scrollIntoViewIfNeeded();
    // A label gives way to what the cursor reads: it is put where nothing is labelled.
    await compare.getByRole('slider', { name: 'All pours by inclination' }).press('Home');
    await expect.poll(async () => (await labelsOf(page, 1)).length).toBe(COUNT + 1);
    for (const chart of [0, 1]) {
      const labels = await labelsOf(page, chart);
      apart(labels);
      expect(new Set(labels.map(({ text }) => text)).size).toBe(labels.length);
      for (const name of NAMES) expect(labels.filter((label) => label.name === name)).toHaveLength(1);
    }
    await picture(page, `eight-${width}`);
  }

  await page.setViewportSize({ width: 1440, height: 900 });
  const keyOf = async (chart: number) =>
    (await compare.locator('.pair figure').nth(chart).locator('[data-key] text').allTextContents()).map(
      (text) => text.trim(),
    );
  // The first has room for short names; the second, whose lines end together, for numbers, which stand in its key too.
  expect(await keyOf(0)).toEqual(IN_ORDER);
  expect((await keyOf(1)).map((text) => text.replace(/\s+/g, ' '))).toEqual([
    'L level fill',
    ...IN_ORDER.map((name, index) => `${index + 1} ${name}`),
  ]);
  const lanes = compare.locator('.strip text.run-label');
  expect(await lanes.locator('title').allTextContents()).toEqual(IN_ORDER);
  const [words, lane] = await compare.locator('.strip:has(h4)').evaluate((strip) => {
    const ends = [...strip.querySelectorAll('text.run-label')].map(
      (text) => text.getBoundingClientRect().right,
    );
    const starts = [...strip.querySelectorAll('.lane')].map((line) => line.getBoundingClientRect().left);
    return [Math.max(...ends), Math.min(...starts)];
  });
  expect(words).toBeLessThan(lane!);
  for (const table of ['inputs', 'figures'])
    expect(await compare.locator(`[data-table="${table}"] thead a`).allTextContents()).toEqual(IN_ORDER);

  // The lines differ without colour as well, in the looks that the browser gives them.
  const dashes = await compare
    .locator('.pair figure')
    .first()
    .locator('[data-series] .chart-line')
    .evaluateAll((lines) => lines.map((line) => getComputedStyle(line).strokeDasharray));
  expect(new Set(dashes).size).toBe(COUNT);
  const colours = () =>
    compare
      .locator('.pair figure')
      .first()
      .locator('[data-series] .chart-line')
      .evaluateAll((lines) => lines.map((line) => getComputedStyle(line).stroke));
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await expect.poll(async () => new Set(await colours()).size).toBe(COUNT);
    await picture(page, `eight-${colorScheme}`);
  }
  await page.emulateMedia({ colorScheme: 'light' });

  await compare.locator('.pair figure').first().locator('summary', { hasText: 'Save front speed' }).click();
  const saving = page.waitForEvent('download');
  await compare.getByRole('button', { name: 'Save as SVG' }).first().click();
  const svg = readFileSync(await (await saving).path(), 'utf8');
  for (const name of NAMES) expect(svg).toContain(name);
  expect(
    new Set([...svg.matchAll(/stroke-dasharray="([^"]+)"/g)].map(([, dash]) => dash)).size,
  ).toBeGreaterThanOrEqual(COUNT);
});

test('two pours: what differs stands over the figures in the same columns, with no empty room beside it', async () => {
  const page = await openBook(writeBook(bookOf(2)));
  await waitUntilFresh(page);
  const boxOf = (table: string) => page.locator(`[data-table="${table}"]`).boundingBox();
  const [inputs, figures, around] = [
    (await boxOf('inputs'))!,
    (await boxOf('figures'))!,
    (await page.locator('[data-kind="compare"] .tables').boundingBox())!,
  ];
  for (const box of [inputs, figures]) expect(box.width).toBeGreaterThan(0.98 * around.width);
  expect(inputs.y + inputs.height).toBeLessThan(figures.y);
  const columns = (table: string) =>
    page
      .locator(`[data-table="${table}"] thead th a`)
      .evaluateAll((heads) => heads.map((head) => Math.round(head.getBoundingClientRect().left)));
  expect(await columns('inputs')).toEqual(await columns('figures'));
  await picture(page, 'two-pours');
});
