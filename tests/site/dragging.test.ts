import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { waitUntilFresh } from './helpers/bench';
import { type DragWork, workDuring } from './helpers/dragWork';
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

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

/** Of the boxes of the page a layout may look at so many while something is dragged; the whole page is not laid out anew. */
const LARGEST_SHARE = 0.1;
/** What appears in cells out of the window: a line that says they are old, not pictures and charts at every move. */
const MADE_UNSEEN = 30;

const most = (values: readonly number[]): number => Math.max(0, ...values);

const toldWork = ({ layoutShares, madeUnseen }: DragWork): string =>
  `${layoutShares ? `largest layout ${(most(layoutShares) * 100).toFixed(1)} % of the page` : 'layouts not told'}, ${madeUnseen} elements made unseen`;

function expectLittle({ layoutShares, madeUnseen }: DragWork, what: string): void {
  if (layoutShares) {
    expect(layoutShares.length).toBeGreaterThan(0);
    expect(most(layoutShares), `${what}: largest layout`).toBeLessThan(LARGEST_SHARE);
  }
  expect(madeUnseen, `${what}: made out of the window`).toBeLessThan(MADE_UNSEEN);
}

/** Drags a handle, still held afterwards; gives how many curves came, and tells how long the page took over it. */
async function drag(
  page: Page,
  what: string,
  handle: Locator,
  reach: { right: number; down: number },
): Promise<number> {
  await watchTasks(page);
  const work = await workDuring(page, () => swing(page, handle, reach));
  const { sketches, longTasks } = await page.evaluate(() => ({
    sketches: performance.getEntriesByName('front sketch').map(({ duration }) => duration),
    longTasks: (window as unknown as { longTasks: number[] }).longTasks,
  }));
  console.info(
    `${what}: ${sketches.length} curves in ${MOVES} moves, median ${median(sketches).toFixed(0)} ms, longest ${most(sketches).toFixed(0)} ms; ${longTasks.length} tasks over 50 ms, longest ${most(longTasks).toFixed(0)} ms; ${toldWork(work)}`,
  );
  expectLittle(work, what);
  return sketches.length;
}

test('the front-speed curve follows a corner, a level and the end of a tilt while they are dragged', async () => {
  const page = await openPage({ height: 1500 });
  await waitUntilFresh(page);
  const section = page.locator('[data-kind="section"]').first();
  const corner = section.getByRole('slider', { name: /^R3/ });
  await corner.scrollIntoViewIfNeeded();
  await warmUp(page);
  expect(await drag(page, 'corner', corner, { right: 0, down: -40 })).toBeGreaterThan(MOVES / 10);
  const live = section.locator('[data-part="live front"]');
  await live.scrollIntoViewIfNeeded();
  await live.getByText('sketch', { exact: true }).waitFor();
  await page.mouse.up();
  await waitUntilFresh(page);
  expect(await live.getByText('sketch', { exact: true }).count()).toBe(0);

  const level = section.getByRole('slider', { name: 'charge level' });
  await level.scrollIntoViewIfNeeded();
  await drag(page, 'level', level, { right: 0, down: 30 });
  await page.mouse.up();

  const tilt = page.locator('[data-kind="tilt"]', { has: page.locator('.knot.hold') }).first();
  const stage = tilt.locator('.knot').nth(1);
  await stage.scrollIntoViewIfNeeded();
  await waitUntilFresh(page);
  await drag(page, 'stage', stage, { right: -60, down: 0 });
  await page.mouse.up();
  await typeBasinLength(page, section);
});

/** The basin is one number: its corners follow, one step back undoes it, and a basin too short to ladle into is refused. */
async function typeBasinLength(page: Page, section: Locator): Promise<void> {
  const length = section.getByRole('textbox', { name: 'basin length, back wall to mouth' });
  const rim = section.getByRole('textbox', { name: 'R2 x, mm' });
  await length.scrollIntoViewIfNeeded();
  const [before, rimBefore] = [await length.inputValue(), Number(await rim.inputValue())];
  await length.press('ControlOrMeta+a');
  await length.pressSequentially(String(Number(before) + 20));
  await length.press('Enter');
  await expect.poll(async () => Number(await rim.inputValue())).toBeCloseTo(rimBefore + 20, 6);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect.poll(() => length.inputValue()).toBe(before);
  expect(Number(await rim.inputValue())).toBe(rimBefore);
  await length.fill('1');
  await section.getByText(/too little to ladle into/).waitFor();
  await length.press('Enter');
  // What was typed stays beside what is wrong with it, and the basin is as it was.
  expect(await length.inputValue()).toBe('1');
  expect(await section.getByText(/too little to ladle into/).isVisible()).toBe(true);
  expect(Number(await rim.inputValue())).toBe(rimBefore);
}
