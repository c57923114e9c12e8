import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Longest wait for the pours of a book; a loaded machine takes its time [ms]. */
const PATIENCE = 120_000;

/**
 * How many parts of cells wait for their turn to be drawn, and the state of each cell. Both are read at one moment: read
 * one after the other, a pour may end in between, and neither shows that its pictures are still to come.
 */
const whatIsThere = (page: Page): Promise<{ undrawn: number; states: string[] }> =>
  page.evaluate(() => ({
    undrawn: document.querySelectorAll('[data-undrawn]').length,
    states: [...document.querySelectorAll('[data-cell][data-state]')].map(
      (cell) => cell.getAttribute('data-state') ?? '',
    ),
  }));

/** A guess that is still to be given, and what it hides, are as far as they come by themselves. */
const UP_TO_DATE = new Set(['fresh', 'open', 'hidden']);

/** Waits until every cell of the book says that it is up to date, and all of it is drawn. */
export async function waitUntilFresh(page: Page): Promise<void> {
  await page.locator('[data-cell][data-state]').first().waitFor();
  // Asked together: while the first cells alone are drawn, all that is there may be up to date.
  const outstanding = async () => {
    const { undrawn, states } = await whatIsThere(page);
    return [undrawn, states.filter((state) => !UP_TO_DATE.has(state))];
  };
  await expect.poll(outstanding, { timeout: PATIENCE, interval: 200 }).toEqual([0, []]);
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
