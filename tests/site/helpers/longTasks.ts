import type { Page } from 'playwright-core';

/** From now on, and no longer from before, the page keeps the lengths [ms] of its tasks over 50 ms, in `window.longTasks`. */
export const watchTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const kept = window as unknown as { longTasks: number[]; taskWatch?: PerformanceObserver };
    // Each watch tells every task: with an earlier one left on, it would be counted twice.
    kept.taskWatch?.disconnect();
    kept.longTasks = [];
    kept.taskWatch = new PerformanceObserver((list) =>
      kept.longTasks.push(...list.getEntries().map(({ duration }) => duration)),
    );
    kept.taskWatch.observe({ type: 'longtask' });
    performance.clearMeasures();
  });
