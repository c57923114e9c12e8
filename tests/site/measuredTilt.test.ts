import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { useOnePage } from './helpers/onePage';
import { onePour } from './helpers/sampleFile';

const openBook = useOnePage();
const kindOf = (page: Page, kind: string) =>
  page.locator('label', { hasText: new RegExp(`^\\s*${kind}\\s*$`) }).first();
const isChosen = (page: Page, kind: string): Promise<boolean> =>
  page.locator(`input[type=radio][value=${kind}]`).first().isChecked();
const course = async (page: Page): Promise<string> =>
  (await page.locator('.dial p').first().textContent()) ?? '';
const awaited = (page: Page) => page.getByText('No readings yet.');

async function read(page: Page, name: string, lines: readonly string[]): Promise<void> {
  const buffer = Buffer.from(lines.join('\n'));
  const chooser = page.locator('input[type=file][accept*="csv"]').first();
  await chooser.setInputFiles({ name, mimeType: 'text/csv', buffer });
}

/** A film's readings, four a second: 0 to 120° counted up, a little off. */
const FILM = [
  'time_s,angle_deg',
  ...Array.from({ length: 25 }, (_, i) => {
    const share = Math.min(1, Math.max(0, (i - 2) / 20));
    const angle = 120 * share ** 2 * (3 - 2 * share) + 0.8 * Math.sin(2.7 * i + 1);
    return `${(i * 0.25).toFixed(2)},${angle.toFixed(2)}`;
  }),
];

test('a file of readings with decimal commas becomes a tilt, and says what it was taken for', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'measured').click();
  const lines = Array.from({ length: 120 }, (_, i) => {
    const share = Math.min(1, Math.max(0, (i - 10) / 100));
    return `${(i * 0.04).toFixed(3)};${(-80 * share ** 2 * (3 - 2 * share)).toFixed(2)}`.replaceAll('.', ',');
  });
  await read(page, 'dry-run.csv', ['t (s);angle (°)', ...lines]);
  await expect.poll(() => page.locator('.file').first().textContent()).toContain('decimal comma; 120 rows');
  await expect.poll(() => course(page)).toContain('−80.0°');
});

test('a tilt is not measured before there are readings, and says what is poured until then', async () => {
  const page = await openBook(onePour());
  const before = await course(page);
  await kindOf(page, 'measured').click();
  await awaited(page).waitFor();
  expect(
    await page
      .getByRole('status')
      .filter({ has: awaited(page) })
      .textContent(),
  ).toContain('Until a file is chosen the tilt stays steady, as drawn here, and so it is poured.');
  expect(await course(page)).toBe(before);
  expect(await page.locator('.chart .knot.hold').count()).toBe(0);
  expect(await page.getByRole('textbox', { name: 'start at' }).count()).toBe(0);
  // Nothing was changed, so nothing is there to be undone.
  expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
  await kindOf(page, 'steady').click();
  await expect.poll(() => awaited(page).count()).toBe(0);
  expect(await course(page)).toBe(before);
});

test('readings are smoothed as their noise asks, start where the die starts, and are there again after another kind', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'measured').click();
  await awaited(page).waitFor();
  await read(page, 'film.csv', FILM);
  const told = page.locator('.file').first();
  const smoothing = page.getByRole('textbox', { name: 'smoothed over' });
  await expect.poll(() => told.textContent()).toMatch(/scatter about the line 0\.[1-9]\d°/);
  expect(Number(await smoothing.inputValue())).toBeGreaterThanOrEqual(1);
  await smoothing.fill('0.2');
  await expect.poll(() => told.textContent()).toContain('not known: too few readings in 0.20 s');
  await page.keyboard.press('Control+z');

  // Counted from 0 to 120°, all but the start is out of reach once it is turned: told once.
  const refusal = page.locator('.wrong', { hasText: 'out of reach' });
  expect(await refusal.locator('b').allTextContents()).toEqual([
    expect.stringMatching(/^\d+ of \d+ smoothed readings are out of reach, the furthest at −1[12]\d\.\d°\.$/),
  ]);
  expect(await refusal.textContent()).not.toMatch(/knot/i);
  // The machine did turn so: no other tilt stands for it, and what is missing is where its readings start.
  expect(await page.getByRole('button', { name: 'Take the nearest the machine can do' }).count()).toBe(0);
  expect(await refusal.textContent()).toMatch(
    /With a start of (19|20|21)(\.\d+)?° to 7\d(\.\d+)?° all lie within\./,
  );
  const start = page.getByRole('textbox', { name: 'start at' });
  await start.fill('30');
  await start.press('Enter');
  await expect.poll(() => refusal.count()).toBe(0);
  const turned = await course(page);
  expect(turned).toMatch(/From \+30\.0° to −(89|90)\.\d°/);
  const level = page.getByRole('textbox', { name: 'shows when its face is level' });
  expect(Math.abs(Number((await level.inputValue()).replace('−', '-')) - 30)).toBeLessThan(2);

  await kindOf(page, 'steady').click();
  await expect.poll(() => course(page)).not.toBe(turned);
  await kindOf(page, 'measured').click();
  await expect.poll(() => course(page)).toBe(turned);
  expect(await awaited(page).count()).toBe(0);
  expect(await isChosen(page, 'measured')).toBe(true);
  // Without their file they still move together.
  await start.fill('25');
  await start.press('Enter');
  await expect.poll(() => course(page)).toMatch(/From \+25\.0° to −(94|95)\.\d°/);
});
