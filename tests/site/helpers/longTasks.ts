import type { Page } from 'playwright-core';

/** From now on the page keeps the lengths [ms] of its tasks over 50 ms, in `window.longTasks`. */
export const watchTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const kept = window as unknown as { longTasks: number[] };
    kept.longTasks = [];
    new PerformanceObserver((list) =>
      kept.longTasks.push(...list.getEntries().map(({ duration }) => duration)),
    ).observe({ type: 'longtask' });
    performance.clearMeasures();
  });
