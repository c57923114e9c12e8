import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Longest wait for the pours of a book; a loaded machine takes its time [ms]. */
const PATIENCE = 120_000;

const states = (page: Page): Promise<string[]> =>
  page
    .locator('[data-cell][data-state]')
    .evaluateAll((cells) => cells.map((cell) => cell.getAttribute('data-state') ?? ''));

/** Parts of cells that wait for their turn to be drawn. */
const undrawn = (page: Page): Promise<number> => page.locator('[data-undrawn]').count();

/** A guess that is still to be given, and what it hides, are as far as they come by themselves. */
const UP_TO_DATE = new Set(['fresh', 'open', 'hidden']);

/** Waits until every cell of the book says that it is up to date, and all of it is drawn. */
export async function waitUntilFresh(page: Page): Promise<void> {
  await page.locator('[data-cell][data-state]').first().waitFor();
  // Asked together: while the first cells alone are drawn, all that is there may be up to date.
  await expect
    .poll(async () => [await undrawn(page), (await states(page)).filter((state) => !UP_TO_DATE.has(state))], {
      timeout: PATIENCE,
      interval: 200,
    })
    .toEqual([0, []]);
}

/** A figure of the compare table: which pour, which figure, the number behind it, and what a reader sees. */
export interface ShownFigure {
  readonly pour: string;
  readonly key: string;
  readonly value: number | null;
  readonly text: string;
}

/** All figures of the book's compare table. */
export async function shownFigures(page: Page): Promise<ShownFigure[]> {
  const cells = await page.locator('[data-table="figures"] td[data-key]').all();
  return Promise.all(
    cells.map(async (cell) => {
      const value = await cell.getAttribute('data-value');
      return {
        pour: (await cell.getAttribute('data-pour')) ?? '',
        key: (await cell.getAttribute('data-key')) ?? '',
        value: value === null ? null : Number(value),
        text: (await cell.locator('b').textContent()) ?? '',
      };
    }),
  );
}
