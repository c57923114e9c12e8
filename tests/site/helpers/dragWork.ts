import type { Page } from 'playwright-core';
import { isFirefox } from './launch';

/** What the page did while something was dragged; counts, which do not depend on how loaded the machine is. */
export interface DragWork {
  /** Of each layout, the share of the page's boxes that it had to look at; null in Firefox, which does not tell. */
  readonly layoutShares: readonly number[] | null;
  /** Elements put into cells that are out of the window. */
  readonly madeUnseen: number;
}

interface Kept {
  madeUnseen: number;
  unseenWatch?: MutationObserver;
}

/** Elements made in cells that are out of the window when this is called; the page must not be scrolled meanwhile. */
const watchUnseen = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const kept = window as unknown as Kept;
    kept.unseenWatch?.disconnect();
    kept.madeUnseen = 0;
    kept.unseenWatch = new MutationObserver((changes) => {
      for (const { addedNodes } of changes)
        for (const node of addedNodes)
          if (node instanceof Element) kept.madeUnseen += 1 + node.querySelectorAll('*').length;
    });
    for (const cell of document.querySelectorAll('[data-cell]')) {
      const { top, bottom } = cell.getBoundingClientRect();
      const isUnseen = bottom < 0 || top > window.innerHeight;
      if (isUnseen) kept.unseenWatch.observe(cell, { childList: true, subtree: true });
    }
  });

interface LayoutEvent {
  readonly name: string;
  readonly args: { readonly beginData?: { readonly dirtyObjects: number; readonly totalObjects: number } };
}

/** Looks at what the page does during `act`. */
export async function workDuring(page: Page, act: () => Promise<void>): Promise<DragWork> {
  await watchUnseen(page);
  const layoutShares = isFirefox ? await act().then(() => null) : await layoutsDuring(page, act);
  return {
    layoutShares,
    madeUnseen: await page.evaluate(() => (window as unknown as Kept).madeUnseen),
  };
}

async function layoutsDuring(page: Page, act: () => Promise<void>): Promise<number[]> {
  const browser = page.context().browser();
  if (!browser) throw new Error('The page has no browser to trace.');
  await browser.startTracing(page, { categories: ['devtools.timeline'] });
  await act();
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as { traceEvents: LayoutEvent[] };
  const layouts = trace.traceEvents.flatMap(({ name, args }) =>
    name === 'Layout' && args.beginData ? [args.beginData] : [],
  );
  // A layout that is confined to a part counts the boxes of that part alone.
  const boxes = Math.max(...layouts.map(({ totalObjects }) => totalObjects));
  return layouts.map(({ dirtyObjects }) => dirtyObjects / boxes);
}
