import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { MESH_CELLS_RANGE } from '$src/cells/checkComputation';
import { addCell } from '$src/cells/edit';
import type { Book, Cell, ChargeCell, NoteCell, PourCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { openBookFile } from './helpers/books';
import { watchTasks } from './helpers/longTasks';
import { useSite } from './helpers/openPage';

const openPage = useSite();

/** The coarsest mesh there is: what is looked at is the page. */
const coarse = (cell: Cell): Cell =>
  cell.kind === 'pour'
    ? { ...cell, computation: { ...cell.computation, meshCells: MESH_CELLS_RANGE.least, settlingTime: 0 } }
    : cell;
const coarsely = (book: Book): Book => ({ ...book, cells: book.cells.map(coarse) });
const fileOf = (book: Book) => ({ name: 'large.pourbook.json', text: writeBook(coarsely(book)) });

function bookOfNotes(count: number): Book {
  let book = sampleBook();
  while (book.cells.length < count) {
    const note = { ...newCell('note', book), text: `What was seen on day ${book.cells.length}.` } as NoteCell;
    book = addCell(book, note);
  }
  return book;
}

/** Pours of one section under as many masses, all in one comparison. */
function bookOfPours(count: number): Book {
  const cells = sampleBook().cells.filter(({ kind }) => ['section', 'metal', 'tilt'].includes(kind));
  const charge = firstOf(sampleBook(), 'charge');
  const pour = firstOf(sampleBook(), 'pour');
  const compare = firstOf(sampleBook(), 'compare');
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  const charges = numbers.map(
    (n): ChargeCell => ({
      ...charge,
      id: `charge-${n}`,
      name: `Charge ${n}`,
      charge: { by: 'mass', mass: 0.6 + n * 0.002 },
    }),
  );
  const pours = numbers.map(
    (n): PourCell => ({ ...pour, id: `pour-${n}`, name: `Pour ${n}`, charge: `charge-${n}`, folded: true }),
  );
  const compared = { ...compare, pours: pours.map(({ id }) => id) };
  return { title: 'Fifty', casting: '', cells: [...cells, compared, ...charges, ...pours] };
}

const longest = (page: Page): Promise<number> =>
  page.evaluate(() => Math.max(0, ...(window as unknown as { longTasks: number[] }).longTasks));

test('a book of 200 cells opens, scrolls and is typed in; its longest task is told', async () => {
  const page = await openPage({ isBare: true });
  await openBookFile(page, fileOf(bookOfNotes(200)));
  await expect.poll(() => page.locator('[data-cell]').count(), { timeout: 15_000 }).toBe(200);
  await waitUntilFresh(page);
  await watchTasks(page);
  for (let turn = 0; turn < 10; turn++) {
    await page.mouse.wheel(0, 1500);
    await page.waitForTimeout(30);
  }
  const name = page
    .locator('[data-cell]')
    .nth(150)
    .getByRole('textbox', { name: /^Name of/ });
  await name.focus();
  await page.keyboard.press('End');
  await page.keyboard.type(', seen twice');
  await expect.poll(() => name.inputValue()).toMatch(/, seen twice$/);
  await page.waitForTimeout(100);
  const most = await longest(page);
  console.info(`200 cells: longest task ${most.toFixed(0)} ms`);
});

test('fifty pours in one comparison stand in its tables, the first eight are drawn', async () => {
  const page = await openPage({ isBare: true });
  await openBookFile(page, fileOf(bookOfPours(50)));
  const heads = page.locator('[data-table="figures"] thead th a');
  await expect.poll(() => heads.count(), { timeout: 60_000 }).toBe(50);
  await waitUntilFresh(page);
  await page.getByText('Pictures and charts show the first 8 of 50 pours').waitFor();
  expect(await page.locator('.pictures .one').count()).toBe(8);
  const first = page.locator('[data-table="figures"] tbody th').first();
  const table = page.getByRole('region', { name: 'Figures, table' });
  await table.evaluate((box) => box.scrollTo({ left: 4000 }));
  const [inside, name] = [await table.boundingBox(), await first.boundingBox()];
  expect(name!.x).toBeCloseTo(inside!.x, 0);
});
