import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, Cell } from '$src/cells/kinds';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

const openBook = useOnePage();
const PATIENCE = { timeout: 60_000 };

/** One pour on a coarse mesh. */
function onePour(): Book {
  const sample = sampleBook();
  const kinds = ['section', 'metal', 'tilt', 'charge', 'pour'] as const;
  const cells = kinds.map((kind): Cell => {
    const cell = firstOf(sample, kind);
    return cell.kind === 'pour'
      ? { ...cell, computation: { meshCells: 60, capillaryGate: true, settlingTime: 2 } }
      : cell;
  });
  return { ...sample, cells };
}

const box = (page: Page, name: RegExp): Locator => page.getByRole('textbox', { name });

async function give(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

async function saidAt(page: Page, field: Locator): Promise<string> {
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  return (await page.locator(`[id="${await field.getAttribute('aria-describedby')}"]`).textContent()) ?? '';
}

test('the freezing data of an alloy of one’s own are typed in the metal, move the dwell and the laps, go back one by one and by undo; what cannot be is refused at its field', async () => {
  const page = await openBook(writeBook(onePour()));
  await waitUntilFresh(page);
  const metal = page.locator('[data-kind="metal"]');
  const pour = page.locator('[data-kind="pour"]');
  /** The dwell carries its number itself, other figures in their number. */
  const figure = async (key: string): Promise<number> =>
    Number(
      await pour
        .locator(`[data-key="${key}"][data-value], [data-key="${key}"] [data-value]`)
        .first()
        .getAttribute('data-value'),
    );
  const [dwell, margin] = [await figure('earliest_opening_s'), await figure('lap_margin_s')];
  expect(dwell).toBeGreaterThan(0);

  const liquidus = box(page, /^liquidus/);
  expect(await liquidus.isVisible()).toBe(false);
  await metal.getByText('Freezing, heat and shrinkage').click();
  expect(await liquidus.inputValue()).toBe('613');
  await picture(page, 'own-alloy-as-it-comes');

  const latent = box(page, /^latent heat/);
  await give(latent, '480');
  await expect.poll(() => figure('earliest_opening_s'), PATIENCE).toBeGreaterThan(1.05 * dwell);
  await waitUntilFresh(page);
  const longer = await figure('earliest_opening_s');
  await give(liquidus, '590');
  await expect.poll(() => figure('lap_margin_s'), PATIENCE).toBeGreaterThan(margin + 0.1);
  await metal.getByText('Freezing, heat and shrinkage, 2 of your own').waitFor();
  await metal.getByText('another alloy may hold other dangers').waitFor();
  await picture(page, 'own-alloy');
  await page.setViewportSize({ width: 390, height: 844 });
  await picture(page, 'own-alloy-narrow');
  await page.setViewportSize({ width: 1440, height: 900 });

  await metal.getByRole('button', { name: 'Reset liquidus' }).click();
  expect(await liquidus.inputValue()).toBe('613');
  await waitUntilFresh(page);
  expect(await figure('earliest_opening_s')).toBe(longer);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  expect(await liquidus.inputValue()).toBe('590');

  const solidus = box(page, /^solidus/);
  await give(solidus, '600');
  await expect
    .poll(() => saidAt(page, solidus))
    .toMatch(/solidus \(600\s°C\) lies above the liquidus \(590\s°C\)/);
  await expect.poll(() => pour.first().getAttribute('data-state')).toBe('blocked');
  await picture(page, 'own-alloy-refused');
  await give(solidus, '555');
  await expect.poll(() => solidus.getAttribute('aria-invalid')).toBe(null);
  await metal.getByText('Freezing, heat and shrinkage, 2 of your own').waitFor();

  await give(box(page, /^usual die, to/), '280');
  const to = box(page, /^usual die, to/);
  await expect.poll(() => saidAt(page, to)).toMatch(/no higher than it begins/);
  await give(box(page, /^usual die, from/), '220');
  await expect.poll(() => to.getAttribute('aria-invalid')).toBe(null);
  // Nobody typed a die temperature: it goes to the middle of what is usual now.
  await expect
    .poll(() =>
      box(page, /^die temperature of/)
        .first()
        .inputValue(),
    )
    .toBe('250');
  await metal.getByRole('button', { name: 'Reset usual die, from' }).click();
  await expect
    .poll(() =>
      box(page, /^die temperature of/)
        .first()
        .inputValue(),
    )
    .toBe('350');
});
