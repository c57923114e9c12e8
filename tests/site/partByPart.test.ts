import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { openBookFile } from './helpers/books';
import { isFirefox } from './helpers/launch';
import { useSite } from './helpers/openPage';

const openPage = useSite();

/** A comparison and a card of pours that are soon done. */
function comparedBook(): Book {
  const sample = sampleBook();
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
  const cells = sample.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  const book = { ...sample, cells };
  const card = newCell('shop card', book);
  const pour = cells.find(({ kind }) => kind === 'pour')!.id;
  return addCell(book, card.kind === 'shop card' ? { ...card, pour } : card);
}

/** Parts of the page, by name, that each task of the page changed or added; a task that changed none is left out. */
const watchParts = (page: Page, parts: Readonly<Record<string, string>>): Promise<void> =>
  page.evaluate((parts) => {
    const tasks: string[][] = [];
    Object.assign(window, { changedParts: tasks });
    const elementOf = (node: Node) => (node instanceof Element ? node : node.parentElement);
    new MutationObserver((changes) => {
      const isIn = (where: string) =>
        changes.some(
          ({ target, addedNodes }) =>
            elementOf(target)?.closest(where) ||
            [...addedNodes].some(
              (node) => node instanceof Element && (node.matches(where) || node.querySelector(where)),
            ),
        );
      const names = Object.entries(parts).flatMap(([name, where]) => (isIn(where) ? name : []));
      if (names.length > 0) tasks.push(names);
    }).observe(document.querySelector('main')!, {
      subtree: true,
      childList: true,
      attributes: true,
      characterData: true,
    });
  }, parts);
const changedParts = (page: Page): Promise<readonly string[][]> =>
  page.evaluate(() => (window as unknown as { changedParts: string[][] }).changedParts);

/** What takes no time at all may share a task; here nothing takes none. */
async function slowDown(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 8 });
}

// Firefox has no way to slow a page down.
test.skipIf(isFirefox)(
  'a new record comes to pictures and charts of a comparison, and a card is drawn, part by part',
  async () => {
    const page = await openPage({ book: writeBook(comparedBook()) });
    await slowDown(page);
    await page.locator('main').waitFor();
    await watchParts(page, {
      'head of the card': '.shop-card header',
      'foot of the card': '.shop-card footer',
    });
    await page.locator('.shop-card footer').waitFor({ timeout: 120_000 });
    await waitUntilFresh(page);
    const ofCard = (await changedParts(page)).filter((names) => names.length > 1);
    expect(await page.locator('.shop-card :is(header, footer)').count()).toBe(2);
    expect(ofCard, 'head and foot of the card in one task').toEqual([]);

    await watchParts(page, {
      figures: '[data-kind="compare"] [data-table="figures"]',
      pictures: '[data-kind="compare"] .pictures',
      charts: '[data-kind="compare"] .pair .chart-line',
    });
    await page.locator('[data-kind="charge"]').getByRole('textbox').nth(1).press('ArrowUp');
    await expect.poll(async () => (await changedParts(page)).flat()).toContain('charts');
    await waitUntilFresh(page);
    const tasks = await changedParts(page);
    for (const part of ['figures', 'pictures', 'charts']) expect(tasks.flat()).toContain(part);
    expect(
      tasks.filter((names) => names.length > 1),
      'parts of the comparison changed in one task',
    ).toEqual([]);
  },
);

test('another book is opened first, and its cells are drawn after that', async () => {
  const page = await openPage({ isBare: true });
  await page.locator('[data-cell]').first().waitFor();
  await watchParts(page, { head: 'h1', cells: '[data-cell]' });
  const cells = comparedBook().cells.filter(({ kind }) => kind === 'section' || kind === 'metal');
  const another = { title: 'Another book', casting: '', cells };
  await openBookFile(page, { name: 'another.pourbook.json', text: writeBook(another) });
  await expect
    .poll(async () => new Set((await changedParts(page)).flat()))
    .toEqual(new Set(['head', 'cells']));
  expect(await changedParts(page)).not.toContainEqual(['head', 'cells']);
});
