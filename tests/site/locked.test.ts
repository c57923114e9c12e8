import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { MESH_CELLS_RANGE } from '$src/cells/checkComputation';
import { addCell } from '$src/cells/edit';
import type { Book, Cell, CellKind } from '$src/cells/kinds';
import { setLocked } from '$src/cells/locks';
import { newCell } from '$src/cells/newCell';
import { USUAL_DIE_CYCLE } from '$src/core/heat/dieCycle';
import { USUAL_LADLING } from '$src/core/heat/ladling';
import { fromDegrees } from '$src/core/units';
import { EMPTY_ROW } from '$src/report/castings/casting';
import { firstOf, sampleBook } from '../book/sample';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();
const PATIENCE = { timeout: 90_000 };
/** Text on its sheet. */
const LEAST_CONTRAST = 4.5;

/** A cell of every kind with its optional inputs in sight, all of them locked. */
function lockedBook(): Book {
  const book = sampleBook();
  const pour = firstOf(book, 'pour').id;
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
  const filled = {
    ...book,
    cells: book.cells.map((cell): Cell => {
      if (cell.kind === 'pour') return { ...cell, computation, dieCycle: USUAL_DIE_CYCLE };
      return cell.kind === 'charge' ? { ...cell, ladling: USUAL_LADLING } : cell;
    }),
  };
  const more = <K extends CellKind>(kind: K, part: Partial<Extract<Cell, { kind: K }>>) => ({
    ...(newCell(kind, filled) as Extract<Cell, { kind: K }>),
    ...part,
  });
  const axes = [{ setting: 'tilt.start', from: fromDegrees(10), to: fromDegrees(40), points: 3 }];
  const study = {
    axes,
    figure: 'peakFrontSpeed' as const,
    meshCells: MESH_CELLS_RANGE.least,
    repeatability: [],
  };
  const full = [
    more('study', { pour, study }),
    more('castings', { castings: [{ ...EMPTY_ROW, pour, good: 7, remark: 'first batch' }] }),
    more('guess', { pours: [pour], ask: 'speed call', hides: false }),
    more('shop card', { pour, date: '3 May' }),
  ].reduce<Book>(addCell, filled);
  return full.cells.reduce((locked, { id }) => setLocked(locked, id, true), full);
}

interface Field {
  readonly kind: string;
  readonly name: string;
  readonly isHeld: boolean;
  readonly looksOpen: boolean;
  readonly contrast: number;
}

/** Every field that words or numbers are typed or chosen in, as it looks and as it is told. */
const lookAtFields = (): Field[] => {
  const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const light = (colour: string): number => {
    const [red, green, blue] = channels(colour)
      .slice(0, 3)
      .map((value) =>
        value / 255 <= 0.03928 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4,
      );
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const isClear = (colour: string) => channels(colour)[3] === 0;
  const ground = (node: Element | null): string => {
    const colour = node ? getComputedStyle(node).backgroundColor : 'rgb(255, 255, 255)';
    return isClear(colour) ? ground(node!.parentElement) : colour;
  };
  const fields = document.querySelectorAll<HTMLInputElement>(
    '[data-cell] :is(input:not([type="radio"], [type="checkbox"], [type="range"], [type="file"]), select, textarea)',
  );
  return [...fields].map((field) => {
    const style = getComputedStyle(field);
    const around = getComputedStyle(field.closest('.name, .well') ?? field);
    const [high, low] = [light(style.color), light(ground(field))].sort((a, b) => b - a);
    return {
      kind: field.closest<HTMLElement>('[data-cell]')!.dataset['kind']!,
      name: field.labels?.[0]?.textContent?.trim() || field.getAttribute('aria-label') || field.tagName,
      isHeld: field.matches(':disabled') || field.readOnly === true,
      looksOpen:
        !isClear(style.backgroundColor) ||
        Number.parseFloat(style.borderBottomWidth) > 0 ||
        Number.parseFloat(around.borderBottomWidth) > 0 ||
        !isClear(around.backgroundColor) ||
        (field.tagName === 'SELECT' && style.appearance !== 'none'),
      contrast: ((high! + 0.05) / (low! + 0.05)) * Number(style.opacity),
    };
  });
};

async function expectHeld(page: Page): Promise<readonly Field[]> {
  const fields = await page.evaluate(lookAtFields);
  expect(fields.filter(({ isHeld }) => !isHeld)).toEqual([]);
  expect(fields.filter(({ looksOpen }) => looksOpen)).toEqual([]);
  expect(fields.filter(({ contrast }) => contrast < LEAST_CONTRAST)).toEqual([]);
  return fields;
}

test(
  'every field of a locked cell is held and looks so, in light, dark and high contrast, and opens when unlocked',
  PATIENCE,
  async () => {
    const page = await openPage({ book: writeBook(lockedBook()) });
    await expect.poll(() => page.locator('[data-cell]').count()).toBe(lockedBook().cells.length);
    for (const cell of await page.locator('[data-cell]').all()) await cell.scrollIntoViewIfNeeded();
    await expect.poll(() => page.locator('[data-kind="pour"][data-state="fresh"]').count(), PATIENCE).toBe(2);
    await expect.poll(() => page.locator('[data-undrawn]').count(), PATIENCE).toBe(0);
    // What is folded within a cell is looked at too.
    await page.evaluate(() => {
      for (const part of document.querySelectorAll<HTMLDetailsElement>('[data-cell] details'))
        part.open = true;
    });
    const card = page.locator('[data-kind="shop card"]');
    await card.getByRole('button', { name: 'Print this card' }).waitFor();
    await page.locator('[data-part="die warming"]').first().waitFor();

    const fields = await expectHeld(page);
    const kinds = new Set(fields.map(({ kind }) => kind));
    for (const kind of [
      'section',
      'metal',
      'charge',
      'tilt',
      'pour',
      'study',
      'castings',
      'guess',
      'shop card',
    ])
      expect(kinds, kind).toContain(kind);
    expect(fields.length).toBeGreaterThan(60);
    expect(await card.getByRole('button', { name: 'Print this card' }).isEnabled()).toBe(true);
    // Told to a reader of the screen as a group, and by each field.
    const tilt = page.locator('[data-kind="tilt"]');
    await tilt.getByRole('group', { name: /^Locked inputs of/ }).waitFor();
    expect(await tilt.getByRole('textbox', { name: 'start at' }).isDisabled()).toBe(true);
    expect(await tilt.locator('.knot.hold').count()).toBe(0);
    // Playing is no change: a locked comparison is still stepped through otherwise.
    const compare = page.locator('[data-kind="compare"]');
    await compare.getByText('filled share', { exact: true }).first().click();
    await expect.poll(() => compare.getByRole('radio', { name: 'filled share' }).isChecked()).toBe(true);
    await picture(page, 'locked-1440-light');
    expect(await seriousBarriers(page)).toEqual([]);

    await page.emulateMedia({ colorScheme: 'dark' });
    await expectHeld(page);
    await picture(page, 'locked-1440-dark');
    await page.emulateMedia({ colorScheme: 'dark', contrast: 'more' });
    await expectHeld(page);
    await page.emulateMedia({ colorScheme: 'light', contrast: 'more' });
    await expectHeld(page);
    await page.emulateMedia({ colorScheme: 'light', contrast: null });
    await page.setViewportSize({ width: 390, height: 900 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await picture(page, 'locked-390-light');
    await page.emulateMedia({ colorScheme: 'dark' });
    await picture(page, 'locked-390-dark');

    await tilt.getByRole('button', { name: /^More for/ }).click();
    await tilt.getByRole('button', { name: /^Unlock its inputs/ }).click();
    await expect.poll(() => tilt.getByRole('textbox', { name: 'start at' }).isEnabled()).toBe(true);
    const opened = (await page.evaluate(lookAtFields)).filter(({ kind }) => kind === 'tilt');
    expect(opened.find(({ name }) => name === 'start at')).toMatchObject({ isHeld: false, looksOpen: true });
  },
);
