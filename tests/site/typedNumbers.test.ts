import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import type { Cell } from '$src/cells/kinds';
import { metalNamed } from '$src/core/metal/metals';
import { pitBehindSill } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';

const openBook = useOnePage();
const MINUS = '\u2212';

/** A drawing and what fills it with bronze; a pour only where it is asked for, and it never runs. */
function bronzeBook(...more: readonly ('pour' | 'pit')[]): string {
  const book = sampleBook();
  const kinds = ['section', 'metal', 'tilt', 'charge'] as const;
  const cells = [...kinds, ...(more.includes('pour') ? (['pour'] as const) : [])].map((kind): Cell => {
    const cell = firstOf(book, kind);
    if (cell.kind === 'metal') return { ...cell, metal: metalNamed('aluminium bronze')! };
    if (cell.kind === 'section' && more.includes('pit')) return { ...cell, section: pitBehindSill() };
    if (cell.kind === 'tilt' && more.includes('pit'))
      return {
        ...cell,
        tilt: {
          kind: 'steady',
          start: fromDegrees(30),
          end: fromDegrees(-90),
          rate: fromDegrees(8),
          smoothing: 0.3,
          limits: cell.tilt.limits,
        },
      };
    return cell;
  });
  return writeBook({ ...book, cells });
}

const box = (page: Page, name: string | RegExp): Locator => page.getByRole('textbox', { name });

async function leave(field: Locator, text: string): Promise<void> {
  await field.click();
  await field.press('Control+a');
  await field.pressSequentially(text);
  await field.blur();
}

/** What is said at a field that is marked as wrong. */
async function saidAt(page: Page, field: Locator): Promise<string> {
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  return (await page.locator(`[id="${await field.getAttribute('aria-describedby')}"]`).textContent()) ?? '';
}

test('a pouring temperature with a mark for thousands is read as such; below the liquidus it is refused where it stands, and the pour leads there', async () => {
  const page = await openBook(bronzeBook('pour'));
  const field = box(page, /^pouring temperature/);
  for (const text of ['1,150', '1.150', '1150C', '2102 F']) {
    await leave(field, text);
    await expect.poll(() => field.inputValue()).toBe('1150');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
  }
  await leave(field, '900');
  await expect.poll(() => saidAt(page, field)).toContain('no liquid: its liquidus is 1045 °C');
  await picture(page, 'typed-cold-metal');
  const pour = page.locator('[data-kind="pour"]');
  const name = firstOf(sampleBook(), 'metal').name;
  await expect.poll(() => pour.textContent()).toContain(`Waits for “${name}”`);
  expect(await pour.getByRole('link', { name }).count()).toBeGreaterThan(0);
  await leave(field, '2500');
  await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
});

test('a value retyped as the source has it keeps the source', async () => {
  const page = await openBook(bronzeBook());
  const field = box(page, /^pouring temperature/);
  const row = page.getByRole('row').filter({ has: field });
  await leave(field, '1150');
  await expect.poll(() => row.textContent()).toContain('Typed in by you');
  await leave(field, '1140');
  await expect.poll(() => row.textContent()).toContain('Usual range 1100 to 1180 °C');
  expect(await row.textContent()).not.toContain('Typed in by you');
});

test('what may be two numbers is asked about and kept; what was refused is not called used; an empty field asks for a number', async () => {
  const page = await openBook(bronzeBook());
  const field = box(page, /^pivot x/);
  await leave(field, '40');
  await leave(field, '1,250');
  const asked = await saidAt(page, field);
  expect(asked).toContain('Is this 1250 or 1.25?');
  expect(asked).toContain('40.0 mm is still used');
  expect(await field.inputValue()).toBe('1,250');
  await picture(page, 'typed-either');
  await leave(field, '12,250');
  expect(await field.inputValue()).toBe('12.25');
  await leave(field, '2.2 cm');
  expect(await field.inputValue()).toBe('22.0');
  await field.fill('');
  await field.blur();
  expect(await saidAt(page, field)).toContain('Type a number.');

  const cavities = box(page, /^cavities side by side/);
  await leave(cavities, '1.5');
  expect(await cavities.inputValue()).toBe('1.5');
  expect(await saidAt(page, cavities)).toContain('1.5');
  await leave(cavities, 'two');
  expect(await saidAt(page, cavities)).toContain('nothing is used until then');
});

test('a head below the mouth is answered with those that go, and a charge told by its level takes one that stands', async () => {
  const page = await openBook(bronzeBook());
  const by = (name: string) => page.getByRole('radio', { name, exact: true });
  await by('head wanted').check({ force: true });
  const head = box(page, /^head above the mouth/);
  await leave(head, '-5');
  await expect.poll(() => saidAt(page, head)).toMatch(/Type 0 to \d+ mm\./);

  const pit = await openBook(bronzeBook('pit'));
  await by('mass').check({ force: true });
  await leave(box(pit, 'mass'), '900');
  await by('fill level').check({ force: true });
  const level = box(pit, /^level from the lip/);
  expect(await level.getAttribute('aria-invalid')).toBeNull();
  await leave(level, '0');
  await expect
    .poll(() => saidAt(pit, level))
    .toMatch(new RegExp(`between ${MINUS}[\\d.]+ and ${MINUS}[\\d.]+ mm from the lip`));
  await picture(pit, 'typed-level');
});

test('a time out of reach is refused where it was typed and read whole; a start below its end is told at the start', async () => {
  const page = await openBook(bronzeBook('pit'));
  const takes = box(page, 'takes');
  await leave(takes, '100000');
  expect(await saidAt(page, takes)).toContain('The machine cannot turn as slowly as that.');
  expect(await box(page, 'rate').getAttribute('aria-invalid')).toBeNull();
  expect(await takes.inputValue()).toBe('100000');
  // Digit by digit it passes times that are in reach: nobody meant those, and the time before is in force again.
  await leave(takes, '8');
  await takes.fill('');
  await takes.pressSequentially('100000');
  await takes.press('Tab');
  expect(await saidAt(page, takes)).toMatch(
    /The machine cannot turn as slowly as that\. Give .* 8\.00 s is still used\./,
  );
  expect(await takes.inputValue()).toBe('100000');
  await page.getByText(/in 8\.00 s\./).waitFor();
  const [held, shown] = await takes.evaluate((field: HTMLInputElement) => [
    field.scrollWidth,
    field.clientWidth,
  ]);
  expect(held).toBeLessThanOrEqual(shown!);
  await picture(page, 'typed-takes');
  await leave(takes, '0.5 min');
  await expect.poll(() => takes.inputValue()).toBe('30.00');

  const start = box(page, 'start at');
  await leave(start, '-95 deg');
  expect(await saidAt(page, start)).toContain(`would start at ${MINUS}95°`);
  expect(await box(page, 'end at').getAttribute('aria-invalid')).toBeNull();
  await page.getByRole('button', { name: 'Take the nearest the machine can do' }).click();
  await expect.poll(() => start.inputValue()).toBe('0.0');
  expect(await box(page, 'end at').inputValue()).toBe(`${MINUS}90.0`);
});

test('a cell that was added before what it takes is not complete yet, and adds what it lacks', async () => {
  const page = await openBook(writeBook({ title: 'In the order offered', casting: '', cells: [] }));
  const add = (kind: string) => page.locator(`#pick-${kind}`).click();
  for (const kind of ['section', 'metal', 'charge']) {
    await add(kind);
    await page.locator(`[data-kind="${kind}"]`).waitFor();
  }
  const charge = page.locator('[data-kind="charge"]');
  await expect.poll(() => charge.getAttribute('data-state')).toBe('not complete yet');
  await charge.getByText('No tilt is chosen.').waitFor();
  await picture(page, 'typed-incomplete');
  await charge.getByRole('button', { name: 'Add a tilt' }).click();
  await expect.poll(() => charge.getAttribute('data-state')).toBe('fresh');
  expect(await page.locator('[data-kind="tilt"]').count()).toBe(1);

  await add('guess');
  const guess = page.locator('[data-kind="guess"]');
  await guess.getByText('For the teacher: what is asked').waitFor();
  const asked = guess.getByRole('combobox', { name: 'answered by' });
  if (!(await asked.isVisible())) await guess.getByText('For the teacher: what is asked').click();
  await asked.selectOption('own answers');
  await expect.poll(() => guess.getAttribute('data-state')).toBe('not complete yet');
  expect(await guess.getByText('is empty').count()).toBe(0);
});
