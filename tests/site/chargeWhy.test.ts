import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Book, ChargeBy, MetalCell, SectionCell } from '$src/cells/kinds';
import { cavityVolume } from '$src/core/section/cavity';
import { pitBehindSill } from '$src/core/section/shapes';
import { type PageUnits, toPounds } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

/** What a charge says of the way it is told, and the units of coats and metals beside it. */

const openBook = useOnePage();
const sample = sampleBook();

function shop(title: string, charge: ChargeBy, units?: PageUnits): Book {
  const tilt = firstOf(sample, 'tilt');
  return {
    ...sample,
    title,
    ...(units && { units }),
    cells: [
      { ...firstOf(sample, 'section'), section: pitBehindSill() } as SectionCell,
      firstOf(sample, 'metal'),
      { ...tilt, tilt: { ...tilt.tilt, start: 0 } },
      { ...firstOf(sample, 'charge'), charge },
      {
        ...firstOf(sample, 'pour'),
        folded: true,
        computation: { ...firstOf(sample, 'pour').computation, meshCells: 40 },
      },
    ],
  };
}

const note = (page: Page) =>
  page.locator('[data-kind="charge"]').getByText('Told by its level, for no head goes here.');
const cellsShown = (page: Page) => page.locator('[data-cell]').count();

test('a charge in a pit says why it is told by its level, in every state of its section, and the page stays whole', async () => {
  const page = await openBook(writeBook(shop('Pit', { by: 'fill level', fromLip: -0.001 })));
  await note(page).waitFor();
  const charge = page.locator('[data-kind="charge"]');
  expect(await charge.locator('.why').textContent()).toContain(
    'the metal would stand over a rim, or run out on the way',
  );
  for (const width of [1440, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await picture(page, `charge-why-${width}`);
  }
  await page.setViewportSize({ width: 1440, height: 900 });

  // Told by its mass nothing is said.
  await charge
    .getByRole('radio', { name: 'mass' })
    .or(charge.getByRole('button', { name: 'mass', exact: true }))
    .first()
    .click();
  await expect.poll(() => note(page).count()).toBe(0);
  await page.getByRole('button', { name: /^Undo: / }).click();
  await note(page).waitFor();

  // A wrong outline, a section that is gone, a tilt that is gone: nothing is computed of them, and all cells stand.
  for (const name of ['Section', 'Tilt']) {
    await page.getByRole('button', { name: `More for ${name}`, exact: true }).click();
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await expect.poll(() => note(page).count()).toBe(0);
    expect(await cellsShown(page)).toBe(4);
    await page.getByRole('button', { name: /^Undo: / }).click();
    await note(page).waitFor();
    expect(await cellsShown(page)).toBe(5);
  }
  const start = page.locator('[data-kind="tilt"]').getByRole('textbox', { name: 'start at' });
  await start.fill('-95');
  await start.blur();
  await expect.poll(() => note(page).count()).toBe(0);
  expect(await cellsShown(page)).toBe(5);
});

test('a level within what a hand keeps of the lip is told as brimful, not in hundredths of a millimetre', async () => {
  const page = await openBook(writeBook(shop('Brim', { by: 'fill level', fromLip: -0.000082 })));
  const charge = page.locator('[data-kind="charge"]');
  await charge.getByText('mass to ladle').waitFor();
  const text = (await charge.textContent())!.replaceAll(/\s+/g, ' ');
  expect(text).not.toMatch(/0\.0\d+ mm/);
  expect(text).toContain('0.1 mm below the lip, lying dead level');
  expect(text).toContain('brimful level with the lip, as near as a hand keeps it');
});

test('a section tells what its cavity weighs filled with its metal, in the units of the book', async () => {
  const { density } = (firstOf(sample, 'metal') as MetalCell).metal;
  const mass = cavityVolume(pitBehindSill()) * density.value;
  const level = { by: 'fill level', fromLip: -0.001 } as const;
  const pounds = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
  for (const [book, weight] of [
    [shop('Weighed', level), `${mass.toFixed(2)} kg`],
    [shop('Weighed in pounds', level, pounds), `${toPounds(mass).toFixed(2)} lb`],
  ] as const) {
    const page = await openBook(writeBook(book));
    await page.locator('[data-kind="section"]').getByText(`filled, ${weight} of A356`).waitFor();
  }
});

test('a book in inches has coats in Btu/h ft²°F, surface tension in dyn/cm and the metal’s heats in Btu, typed and shown', async () => {
  const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
  const page = await openBook(writeBook(shop('Inches', { by: 'fill level', fromLip: -0.001 }, units)));
  const metal = page.locator('[data-kind="metal"]');
  const tension = metal.getByRole('textbox', { name: /surface tension/ });
  await tension.waitFor();
  expect(Number(await tension.inputValue())).toBeGreaterThan(500);
  expect(await metal.textContent()).toContain('dyn/cm');
  expect(await metal.textContent()).not.toContain('N/m');
  expect(await metal.textContent()).toContain('cP');
  expect(await metal.textContent()).not.toContain('Pa s');
  const freezing = metal.locator('summary', { hasText: 'Freezing, heat and shrinkage' }).first();
  await freezing.click();
  for (const unit of ['Btu/lb', 'Btu/lb°F', 'Btu/h ft°F'])
    await metal.getByText(unit, { exact: true }).first().waitFor();
  const section = page.locator('[data-kind="section"]');
  const coats = section.locator('[data-table="coats"]');
  if (!(await coats.isVisible())) await section.getByText(/coat/i).first().click();
  await coats.getByText('Btu/h ft²°F').first().waitFor();
  const transfer = coats.getByRole('textbox', { name: /^heat transfer of/ }).first();
  await transfer.fill('200');
  await transfer.blur();
  await expect.poll(() => transfer.inputValue()).toBe('200');
  await page.getByRole('button', { name: 'Save the book as a file' }).first().waitFor();
  await transfer.fill('2000 W/m²K');
  await transfer.blur();
  await expect.poll(() => transfer.inputValue()).toBe('352.2');
  await picture(page, 'inches');
});
