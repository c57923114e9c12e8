import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, Cell } from '$src/cells/kinds';
import { metalNamed } from '$src/core/metal/metals';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

const openBook = useOnePage();
const PATIENCE = { timeout: 90_000 };
const COARSE = { meshCells: 60, capillaryGate: true, settlingTime: 2 };

/** Two pours of one basin and one tilt: the second of bronze, or the same as the first. */
function pairOf(other: 'bronze' | 'alike'): Book {
  const sample = sampleBook();
  const bronze = {
    ...firstOf(sample, 'metal'),
    id: 'bronze',
    name: 'Bronze',
    metal: metalNamed('aluminium bronze')!,
  };
  const [, second] = sample.cells.filter(({ kind }) => kind === 'pour');
  const cells = sample.cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'metal') return [cell, bronze];
    if (cell.kind !== 'pour') return [cell];
    const isOther = cell.id === second!.id && other === 'bronze';
    return [{ ...cell, computation: COARSE, metal: isOther ? bronze.id : cell.metal }];
  });
  return { ...sample, cells };
}

test('pours of two metals are each held to the limit of their own, named on the chart; equal pours share one', async () => {
  const page = await openBook(writeBook(pairOf('bronze')));
  await waitUntilFresh(page);
  const compare = page.locator('[data-kind="compare"]');
  await compare.scrollIntoViewIfNeeded();
  const limits = compare.locator('svg text').filter({ hasText: /critical/ });
  await expect.poll(() => limits.count(), PATIENCE).toBeGreaterThanOrEqual(2);
  const told = (await limits.allTextContents()).join('; ');
  expect(told).toMatch(/A356/);
  expect(told).toMatch(/bronze/i);
  await picture(page, 'two-critical-lines');

  const alike = await openBook(writeBook(pairOf('alike')));
  await waitUntilFresh(alike);
  await alike.locator('[data-kind="compare"]').scrollIntoViewIfNeeded();
  const one = alike.locator('[data-kind="compare"]');
  await one
    .getByText(/the same; so must the figures be|Nothing: the inputs are the same/)
    .first()
    .waitFor(PATIENCE);
  const shared = await one
    .locator('svg text')
    .filter({ hasText: /critical/ })
    .allTextContents();
  expect(shared.join('; ')).not.toMatch(/A356/);
  await one.locator('[data-key="peak_front_speed_m_per_s"]').nth(1).waitFor(PATIENCE);
  const peaks = await one.locator('[data-key="peak_front_speed_m_per_s"]').allTextContents();
  expect(peaks.length).toBeGreaterThanOrEqual(2);
  expect(new Set(peaks.map((text) => text.trim())).size).toBe(1);
});
