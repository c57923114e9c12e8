import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { waitUntilFresh } from './helpers/bench';
import { watchTasks } from './helpers/longTasks';
import { useSite } from './helpers/openPage';

const openPage = useSite();

/** Moves of the hand in one drag, one each frame at 60 frames a second. */
const MOVES = 60;
const FRAME = 16;

/** Takes hold of a handle and swings it to and fro, as a hand does; it is still held afterwards. */
async function swing(page: Page, handle: Locator, reach: { right: number; down: number }): Promise<void> {
  const box = await handle.boundingBox();
  if (!box) throw new Error('The handle is not drawn.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move++) {
    const share = Math.sin((move / MOVES) * Math.PI * 0.8);
    await page.mouse.move(x + reach.right * share, y + reach.down * share);
    await page.waitForTimeout(FRAME);
  }
}

/** A pointer that wanders over the page makes the worker ready before anything is dragged. */
async function warmUp(page: Page): Promise<void> {
  await page.mouse.move(600, 300);
  await expect
    .poll(() => page.evaluate(() => performance.getEntriesByName('front sketch').length), { timeout: 30_000 })
    .toBeGreaterThan(0);
}

const measured = (page: Page): Promise<{ sketches: number[]; longTasks: number[] }> =>
  page.evaluate(() => ({
    sketches: performance.getEntriesByName('front sketch').map(({ duration }) => duration),
    longTasks: (window as unknown as { longTasks: number[] }).longTasks,
  }));

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

function report(what: string, { sketches, longTasks }: Awaited<ReturnType<typeof measured>>): void {
  const most = (values: readonly number[]) => Math.max(0, ...values).toFixed(0);
  console.info(
    `${what}: ${sketches.length} curves in ${MOVES} moves, median ${median(sketches).toFixed(0)} ms, longest ${most(sketches)} ms; ${longTasks.length} tasks over 50 ms, longest ${most(longTasks)} ms`,
  );
}

test('the front-speed curve follows a corner, a level and the end of a tilt while they are dragged', async () => {
  const page = await openPage({ height: 1500 });
  await waitUntilFresh(page);
  const section = page.locator('[data-kind="section"]').first();
  await section.getByRole('slider', { name: /^R3/ }).scrollIntoViewIfNeeded();
  await warmUp(page);
  await watchTasks(page);
  await swing(page, section.getByRole('slider', { name: /^R3/ }), { right: 0, down: -40 });
  const live = section.locator('[data-part="live front"]');
  await live.scrollIntoViewIfNeeded();
  await live.getByText('sketch', { exact: true }).waitFor();
  await page.mouse.up();
  const corner = await measured(page);
  report('corner', corner);
  expect(median(corner.sketches)).toBeLessThanOrEqual(100);
  expect(corner.sketches.length).toBeGreaterThan(MOVES / 10);
  await waitUntilFresh(page);
  expect(await live.getByText('sketch', { exact: true }).count()).toBe(0);

  await section.getByRole('slider', { name: 'charge level' }).scrollIntoViewIfNeeded();
  await watchTasks(page);
  await swing(page, section.getByRole('slider', { name: 'charge level' }), { right: 0, down: 30 });
  await page.mouse.up();
  const level = await measured(page);
  report('level', level);
  expect(median(level.sketches)).toBeLessThanOrEqual(100);

  const tilt = page.locator('[data-kind="tilt"]', { has: page.locator('.knot.hold') }).first();
  await tilt.locator('.knot').nth(1).scrollIntoViewIfNeeded();
  await watchTasks(page);
  await swing(page, tilt.locator('.knot').nth(1), { right: -60, down: 0 });
  await page.mouse.up();
  const stage = await measured(page);
  report('stage', stage);
  expect(median(stage.sketches)).toBeLessThanOrEqual(100);
});
