import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { shownFigures, waitUntilFresh } from './helpers/bench';
import { openBookFile } from './helpers/books';
import { coarseBook } from './helpers/coarseBook';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';

const openPage = useSite();

interface LooseBook {
  readonly cells: { readonly kind: string; readonly computation?: { meshCells: number } }[];
}

const twoTilts = readFileSync(
  fileURLToPath(new URL('../../static/two-tilts.pourbook.json', import.meta.url)),
  'utf8',
);

/** The example with a mesh so fine that its pours are under way long enough to be stopped. */
function slowExample(): string {
  const file = JSON.parse(twoTilts) as LooseBook & { readonly book?: LooseBook };
  for (const { computation } of (file.book ?? file).cells) if (computation) computation.meshCells = 2000;
  return JSON.stringify(file);
}

test('with the worker file blocked no figure appears, and the page says why', async () => {
  const page = await openPage({
    prepare: async (context) => {
      await context.route(/pour\.worker/, (route) => route.abort());
    },
    expectedErrors: /Failed to load resource|ERR_FAILED/,
  });
  const pours = page.locator('[data-kind="pour"]');
  await expect
    .poll(() => pours.evaluateAll((cells) => cells.map((cell) => cell.getAttribute('data-state'))), {
      timeout: 30_000,
    })
    .toEqual(['failed', 'failed', 'failed']);
  await picture(page, 'worker-blocked');
  const said = await pours.first().getByRole('alert').textContent();
  expect(said).toContain('could not be loaded');
  expect(await shownFigures(page)).toEqual([]);
  expect(
    await page
      .locator('[data-kind="pour"]')
      .getByText(/\d m\/s/)
      .count(),
  ).toBe(0);
});

test('a running pour is stopped, keeps what is done, and can be run to the end', async () => {
  const page = await openPage({ book: slowExample() });
  const pour = page.locator('[data-kind="pour"]').first();
  await expect.poll(() => pour.getAttribute('data-state'), { timeout: 30_000 }).toBe('running');
  await pour.getByRole('button', { name: 'Stop, keep what is done' }).click();
  await expect.poll(() => pour.getAttribute('data-state'), { timeout: 15_000 }).toBe('stopped');
  await pour.getByText('You stopped this run.').waitFor();
  await page.waitForTimeout(1500);
  expect(await pour.getAttribute('data-state')).toBe('stopped');
  await picture(page, 'stopped');
  await pour.getByRole('button', { name: 'Run to the end' }).click();
  await expect.poll(() => pour.getAttribute('data-state'), { timeout: 15_000 }).toBe('running');
});

/** Added to the worker's file: an error that nothing catches, when a page asks for it. */
const BREAKS_OFF = `
new BroadcastChannel('break off').onmessage = () => { throw new Error('out of sorts'); };`;

const breakableWorkers = (context: BrowserContext): Promise<unknown> =>
  context.route(/pour\.worker/, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: (await response.text()) + BREAKS_OFF });
  });

test('a pour whose worker dies says so, and runs when it is asked to', async () => {
  const page = await openPage({
    isBare: true,
    prepare: async (context) => void (await breakableWorkers(context)),
    expectedErrors: /out of sorts/,
  });
  await openBookFile(page, { name: 'slow.pourbook.json', text: slowExample() });
  const pour = page.locator('[data-kind="pour"]').first();
  await expect.poll(() => pour.getAttribute('data-state'), { timeout: 30_000 }).toBe('running');
  const said = pour.getByRole('alert').getByText('The worker that computes pours broke off');
  // A pour is under way from the moment it is asked for, while its worker may still be on its way: one that dies before
  // it has said anything could not be loaded.
  const share = () => pour.locator('progress').evaluate((bar) => (bar as HTMLProgressElement).value);
  await expect.poll(share, { timeout: 30_000 }).toBeGreaterThan(0);
  const broken = async (): Promise<number> => {
    await page.evaluate(() => new BroadcastChannel('break off').postMessage(null));
    return said.count();
  };
  await expect.poll(broken, { timeout: 60_000, interval: 1000 }).toBe(1);
  await pour.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => pour.getAttribute('data-state'), { timeout: 15_000 }).toBe('running');
});

/** How many finished pours lie in the browser's store. */
const recordsKept = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const store = await new Promise<IDBDatabase>((resolve) => {
      const ask = indexedDB.open('quietpour');
      ask.onsuccess = () => resolve(ask.result);
    });
    const count = await new Promise<number>((resolve) => {
      const ask = store.transaction('recordNotes').objectStore('recordNotes').count();
      ask.onsuccess = () => resolve(ask.result);
    });
    store.close();
    return count;
  });

test('after a reload the pours are there at once, and nothing is computed again', async () => {
  const page = await openPage({
    book: coarseBook(twoTilts),
    expectedErrors: /Failed to load resource|ERR_FAILED/,
  });
  await waitUntilFresh(page);
  // The tables come after what is further up.
  await expect.poll(async () => (await shownFigures(page)).length).toBeGreaterThan(0);
  const before = await shownFigures(page);
  await expect.poll(() => recordsKept(page)).toBe(2);
  await page.context().route(/pour\.worker/, (route) => route.abort());
  await page.reload();
  await waitUntilFresh(page);
  // Fresh at once, while the tables further down are still being drawn.
  await expect.poll(() => shownFigures(page)).toEqual(before);
});
