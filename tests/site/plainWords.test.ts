import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, Cell } from '$src/cells/kinds';
import { fromCelsius } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

const openBook = useOnePage();
const PATIENCE = { timeout: 90_000 };
const COARSE = { meshCells: 60, capillaryGate: true, settlingTime: 2 };

/** Two pours alike but for the temperature of their metal, in a book of inches and degrees Fahrenheit. */
function hotAndCool(): Book {
  const sample = sampleBook();
  const metal = firstOf(sample, 'metal');
  const cool = {
    ...metal,
    id: 'cool',
    name: 'Cool',
    metal: {
      ...metal.metal,
      pouringTemperature: { ...metal.metal.pouringTemperature, value: fromCelsius(680) },
    },
  };
  const [, second] = sample.cells.filter(({ kind }) => kind === 'pour');
  const cells = sample.cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'metal') return [cell, cool];
    if (cell.kind !== 'pour') return [cell];
    return [{ ...cell, computation: COARSE, metal: cell.id === second!.id ? 'cool' : cell.metal }];
  });
  return { ...sample, units: { length: 'in', mass: 'lb', temperature: 'degF' }, cells };
}

test('a comparison names the temperature of the metal, and how sure a pour is shows heat in the units of the book', async () => {
  const page = await openBook(writeBook(hotAndCool()));
  await waitUntilFresh(page);
  const row = page.locator('[data-input="metal as the tilt begins"]');
  await expect.poll(() => row.textContent(), PATIENCE).toMatch(/13\d\d\s°F.*1256\s°F/);
  const compare = page.locator('[data-kind="compare"]');
  expect(await compare.locator('[data-key="lap_margin_s"]').count()).toBe(2);
  expect(await compare.locator('[data-row="verdict"] td').first().textContent()).not.toBe('');
  await compare.scrollIntoViewIfNeeded();
  await picture(page, 'compare-heat');

  const pour = page.locator('[data-kind="pour"]').first();
  await pour.getByRole('button', { name: 'How sure is this?' }).click();
  const sure = pour.locator('[data-part="sensitivity"]');
  await sure.getByRole('columnheader', { name: 'left before freezing' }).waitFor(PATIENCE);
  await expect.poll(() => sure.getByText(/^Peak front speed over all/).count(), PATIENCE).toBe(1);
  expect(await sure.locator('[data-variation="heat.metal-1"]').textContent()).toMatch(/−18\s°F.*in\/s/s);
  expect(await sure.locator('[data-variation="heat.transfer1"]').count()).toBe(1);
  expect(await sure.textContent()).not.toMatch(/\dm\/s|\d\s?m\/s/);
  await sure.scrollIntoViewIfNeeded();
  await picture(page, 'how-sure-heat');
});

test('a charge that spills says so beside its mass and head, with the caution', async () => {
  const book = hotAndCool();
  const cells = book.cells.map((cell) =>
    cell.kind === 'charge' ? { ...cell, charge: { by: 'mass', mass: 0.6 } as const } : cell,
  );
  const page = await openBook(writeBook({ ...book, cells }));
  const charge = page.locator('[data-kind="charge"]');
  await charge.getByText(/in³ of this charge spill over a rim/).waitFor(PATIENCE);
  await charge.getByText(/explodes on anything wet/).waitFor();
  await charge.scrollIntoViewIfNeeded();
  await picture(page, 'charge-spills');
});

test('a pour is duplicated for another metal, and its charge keeps its volume by its level', async () => {
  const book = hotAndCool();
  const cells = book.cells.map((cell) =>
    cell.kind === 'charge' ? { ...cell, charge: { by: 'mass', mass: 0.6 } as const } : cell,
  );
  const page = await openBook(writeBook({ ...book, cells }));
  const { name } = firstOf(book, 'pour');
  await page.getByRole('button', { name: `More for ${name}`, exact: true }).click();
  await page.getByRole('button', { name: /^Duplicate with another metal/ }).click();
  await expect.poll(() => page.locator('[data-kind="metal"]').count()).toBe(3);
  await expect.poll(() => page.locator('[data-kind="charge"]').count()).toBe(2);
  await page
    .locator('[data-kind="charge"]')
    .nth(1)
    .getByLabel(/^level from the lip/)
    .waitFor(PATIENCE);
});
