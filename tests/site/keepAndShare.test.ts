import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { MESH_CELLS_RANGE } from '$src/cells/checkComputation';
import { addCell } from '$src/cells/edit';
import type { Book, Cell, CellKind } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { fromDegrees } from '$src/core/units';
import { EMPTY_ROW, NO_FAULTS } from '$src/report/castings/casting';
import { linkOf } from '$src/ui/share/bookLink';
import { firstOf, sampleBook } from '../book/sample';
import { waitUntilFresh } from './helpers/bench';
import { openBookFile } from './helpers/books';
import { isFirefox } from './helpers/launch';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();

/** A book whose pours are soon done. */
function quickBook(title: string): Book {
  const book = sampleBook();
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
  const cells = book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  return { ...book, title, cells };
}

/** A book of one drawing, for tests that are about keeping books and not about what they hold: nothing is poured. */
function drawnBook(title: string): Book {
  const book = sampleBook();
  return { ...book, title, cells: [firstOf(book, 'section')] };
}

const title = (page: Page) => page.getByRole('textbox', { name: 'Title of the book' });
const fileOf = (book: Book) => ({ name: `${book.title}.pourbook.json`, text: writeBook(book) });
const file = (name: string) => fileOf(drawnBook(name));
const poured = (name: string) => fileOf(quickBook(name));
const kept = (page: Page) => page.locator('header').getByText(/^on this machine/);
const cellsOf = (page: Page, kind: string) => page.locator(`[data-cell][data-kind="${kind}"]`);

/** What is kept is written shortly after the last change. */
async function rename(page: Page, name: string): Promise<void> {
  await title(page).fill(name);
  await title(page).blur();
  await expect
    .poll(
      () =>
        page.evaluate(async (wanted) => {
          const store = await new Promise<IDBDatabase>((resolve) => {
            const ask = indexedDB.open('quietpour');
            ask.onsuccess = () => resolve(ask.result);
          });
          const books = await new Promise<{ text: string }[]>((resolve) => {
            const ask = store.transaction('books').objectStore('books').getAll();
            ask.onsuccess = () => resolve(ask.result);
          });
          store.close();
          return books.some(({ text }) => text.includes(wanted));
        }, name),
      { timeout: 10_000 },
    )
    .toBe(true);
}

test('several books are kept, listed with their outline, renamed, taken off and brought back', async () => {
  const page = await openPage({ book: file('First').text });
  await rename(page, 'Spring trials');
  await openBookFile(page, file('Second'));
  await rename(page, 'Autumn trials');
  await page.reload();
  await expect.poll(() => title(page).inputValue()).toBe('Autumn trials');
  await page.getByRole('button', { name: 'Books on this machine' }).click();
  const shelf = page.getByRole('dialog', { name: 'Books on this machine' });
  await shelf.getByText('Spring trials').waitFor();
  expect(await shelf.locator('li').count()).toBe(2);
  expect(await shelf.locator('svg .floor').count()).toBe(2);
  await picture(page, 'shelf');
  expect(await seriousBarriers(page)).toEqual([]);
  await shelf.getByRole('button', { name: 'Remove Spring trials' }).click();
  await expect.poll(() => shelf.locator('li').count()).toBe(1);
  await shelf.getByRole('button', { name: 'Bring it back' }).click();
  await expect.poll(() => shelf.locator('li').count()).toBe(2);
  await shelf.getByRole('button', { name: 'Rename Spring trials' }).click();
  await shelf.getByRole('textbox', { name: 'New title of Spring trials' }).fill('Trials of May');
  await page.keyboard.press('Enter');
  await shelf.getByRole('button', { name: 'Open Trials of May' }).click();
  await expect.poll(() => title(page).inputValue()).toBe('Trials of May');
});

/** Title of the book that is kept; there is only one. */
const keptTitle = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const store = await new Promise<IDBDatabase>((resolve) => {
      const ask = indexedDB.open('quietpour');
      ask.onsuccess = () => resolve(ask.result);
    });
    const [book] = await new Promise<{ text: string }[]>((resolve) => {
      const ask = store.transaction('books').objectStore('books').getAll();
      ask.onsuccess = () => resolve(ask.result);
    });
    store.close();
    return book?.text.match(/"title": ?"([^"]*)"/)?.[1] ?? '';
  });

test('a page that is left in the moment of a change has kept it', async () => {
  const page = await openPage({ book: file('Before').text });
  await kept(page).waitFor();
  await title(page).fill('Typed and loaded anew');
  await page.reload();
  await expect.poll(() => title(page).inputValue()).toBe('Typed and loaded anew');
  await title(page).fill('Typed and left');
  await page.goto('about:blank');
  await page.goto(inject('siteUrl'));
  await expect.poll(() => title(page).inputValue()).toBe('Typed and left');
});

test('somebody who types without a pause has the book kept meanwhile', async () => {
  const page = await openPage({ book: file('No pause').text });
  await kept(page).waitFor();
  await title(page).evaluate((field: HTMLInputElement) => {
    setInterval(() => {
      field.value = `${field.value} word`.slice(-100);
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }, 100);
  });
  await expect.poll(() => keptTitle(page), { timeout: 20_000 }).toContain('word');
});

/** One book in two tabs, renamed in each: the second has been told and keeps a copy. */
async function twoTabs(): Promise<[first: Page, second: Page]> {
  const page = await openPage({ book: file('Shared').text });
  await rename(page, 'In the first tab');
  const second = await page.context().newPage();
  await second.goto(inject('siteUrl'));
  await second.getByRole('alert').getByText('This book is open in another tab.').waitFor();
  await rename(second, 'In the second tab');
  return [page, second];
}

test('one book in two tabs: the second tab is told, and neither overwrites the other', async () => {
  const [page] = await twoTabs();
  await page.reload();
  await expect.poll(() => title(page).inputValue()).toBe('In the first tab');
});

test('a book that lies open in another tab is neither renamed nor removed from the list, and it is said why', async () => {
  const [page, second] = await twoTabs();
  await second.getByRole('button', { name: 'Books on this machine' }).click();
  const shelf = second.getByRole('dialog', { name: 'Books on this machine' });
  const renameTo = async (next: string) => {
    await shelf.getByRole('button', { name: 'Rename In the first tab' }).click();
    await shelf.getByRole('textbox', { name: 'New title of In the first tab' }).fill(next);
    await second.keyboard.press('Enter');
  };
  await renameTo('From the list');
  await shelf.getByRole('alert').getByText('“In the first tab” lies open in another tab').waitFor();
  expect(
    await shelf
      .getByRole('button', { name: 'Rename In the first tab' })
      .evaluate((one) => one === document.activeElement),
  ).toBe(true);
  await picture(second, 'shelf-held');
  expect(await seriousBarriers(second)).toEqual([]);
  await shelf.getByRole('button', { name: 'Remove In the first tab' }).click();
  await shelf.getByRole('alert').getByText('was not removed').waitFor();
  expect(await shelf.getByText('In the first tab', { exact: true }).count()).toBe(1);

  // Once that tab is gone it is as any other.
  await page.close();
  const held = () => second.evaluate(async () => (await navigator.locks.query()).held?.length);
  await expect.poll(held).toBe(1);
  await renameTo('From the list');
  await shelf.getByText('From the list', { exact: true }).waitFor();
  expect(await shelf.getByRole('alert').count()).toBe(0);
});

test('each book that is begun has a title of its own, selected, so that typing names it', async () => {
  const page = await openPage({ book: file('Before').text });
  await kept(page).waitFor();
  const begin = page.getByRole('button', { name: 'Begin a new book' });
  await begin.click();
  await expect.poll(() => title(page).inputValue()).toBe('New book');
  await begin.click();
  await expect.poll(() => title(page).inputValue()).toBe('New book 2');
  const chosen = () =>
    title(page).evaluate((field: HTMLInputElement) => field.selectionEnd! - field.selectionStart!);
  await expect.poll(chosen).toBe('New book 2'.length);
  expect(await title(page).evaluate((field) => field === document.activeElement)).toBe(true);
  await page.keyboard.type('Spring trials');
  await page.keyboard.press('Tab');
  expect(await title(page).inputValue()).toBe('Spring trials');
  await begin.click();
  await expect.poll(() => title(page).inputValue()).toBe('New book 2');
  await page.getByRole('button', { name: 'Books on this machine' }).click();
  const shelf = page.getByRole('dialog', { name: 'Books on this machine' });
  for (const name of ['New book', 'New book 2', 'Spring trials'])
    await shelf.getByText(name, { exact: true }).waitFor();
});

test('a pour goes by keys to another book, with its inputs; keys move, hide and find cells', async () => {
  const page = await openPage({ book: poured('Source').text });
  const pour = cellsOf(page, 'pour').first();
  await pour.getByRole('button', { name: /^More for/ }).focus();
  await page.keyboard.press('ControlOrMeta+c');
  await openBookFile(page, {
    name: 'empty.pourbook.json',
    text: writeBook({ title: 'Empty', casting: '', cells: [firstOf(sampleBook(), 'note')] }),
  });
  await expect.poll(() => page.locator('[data-cell]').count()).toBe(1);
  await cellsOf(page, 'note')
    .first()
    .getByRole('button', { name: /^More for/ })
    .focus();
  await page.keyboard.press('ControlOrMeta+v');
  await expect.poll(() => page.locator('[data-cell]').count()).toBe(6);
  expect(await page.getByRole('status').first().textContent()).toMatch(/pasted, with copies of/);

  const tilt = cellsOf(page, 'tilt').first();
  await tilt.getByRole('textbox', { name: /^Name of/ }).focus();
  await page.keyboard.press('F8');
  await expect.poll(() => tilt.locator('.body').count()).toBe(0);
  const order = () => page.locator('[data-cell]').evaluateAll((cells) => cells.map(({ id }) => id));
  const before = await order();
  const id = (await tilt.getAttribute('id'))!;
  await page.keyboard.press('Alt+Shift+ArrowUp');
  await expect.poll(async () => (await order()).indexOf(id)).toBe(before.indexOf(id) - 1);
  expect(await page.evaluate(() => document.activeElement?.closest('[data-cell]')?.id)).toBe(id);
  await page.keyboard.press('Alt+Shift+Insert');
  await expect.poll(() => cellsOf(page, 'tilt').count()).toBe(2);
  await page.keyboard.press('F2');
  await page.keyboard.type('charge');
  await page.keyboard.press('Enter');
  await expect
    .poll(() =>
      page.evaluate(() => document.activeElement?.closest('[data-cell]')?.getAttribute('data-kind')),
    )
    .toBe('charge');
  await page.keyboard.press('F4');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  await picture(page, 'keys');
});

test('a link brings a book, which asks before it is opened', async () => {
  const page = await openPage({ book: file('Own').text });
  await rename(page, 'My own');
  const fragment = await linkOf(file('Sent').text);
  await page.goto('about:blank');
  await page.goto(`${inject('siteUrl')}${fragment}`);
  const offer = page.getByRole('alertdialog');
  await offer.getByText('The link brings a book: Sent').waitFor();
  expect(await title(page).inputValue()).toBe('My own');
  await offer.getByRole('button', { name: 'Open it' }).click();
  await expect.poll(() => title(page).inputValue()).toBe('Sent');
  // Put into the address line of the page that is open, as one does with a link out of a letter.
  const another = (await linkOf(file('Sent later').text))!;
  await page.evaluate((put) => location.assign(put), another);
  await offer.getByText('The link brings a book: Sent later').waitFor();
  expect(await page.evaluate(() => location.hash)).toBe('');
  await offer.getByRole('button', { name: 'Not now' }).click();
  // A book is shown before it is kept; the shelf lists what is kept.
  await page.getByRole('button', { name: 'Books on this machine' }).click();
  await page.getByRole('dialog', { name: 'Books on this machine' }).getByText('Sent').first().waitFor();
  await page.goto('about:blank');
  await page.goto(`${inject('siteUrl')}${fragment!.slice(0, 90)}`);
  await page.getByRole('alert').getByText('The book in the link could not be opened.').waitFor();
  expect(await title(page).inputValue()).toBe('Sent');
});

test('what is said of a copied link goes when another book is opened', async () => {
  const page = await openPage({ book: file('Linked').text });
  // A browser that would ask first answers neither yes nor no.
  await page.evaluate(() => {
    const clipboard = { writeText: async () => undefined };
    Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
  });
  const said = page.getByText(/Link copied, \d+ characters/);
  await expect.poll(() => title(page).inputValue()).toBe('Linked');
  await page.getByRole('button', { name: 'Copy a link to this book' }).first().click();
  await said.first().waitFor();
  await openBookFile(page, file('Next'));
  await expect.poll(() => title(page).inputValue()).toBe('Next');
  await expect.poll(() => said.count()).toBe(0);
});

test('numbers of a chart and of its pour are saved under names of their own', async () => {
  const page = await openPage({ book: writeBook(quickBook('Files')) });
  const pour = page.locator('[data-kind="pour"]').first();
  await waitUntilFresh(page);
  const saved = async (press: () => Promise<void>): Promise<string> => {
    const saving = page.waitForEvent('download');
    await press();
    return (await saving).suggestedFilename();
  };
  const ofPour = await saved(() => pour.getByRole('button', { name: 'front speed, CSV' }).click());
  const chart = pour.locator('details', { hasText: /Save front speed/i }).first();
  await chart.locator('summary').click();
  const ofChart = await saved(() => chart.getByRole('button', { name: 'Save numbers as CSV' }).click());
  expect(ofChart).toMatch(/-front-speed\.csv$/);
  expect(ofPour).toMatch(/-front-speed-record\.csv$/);
});

test('a link opens at once where the book kept here is an example as it came', async () => {
  const page = await openPage();
  await title(page).waitFor();
  const example = await title(page).inputValue();
  await kept(page).waitFor();
  const fragment = await linkOf(file('Sent').text);
  await page.goto('about:blank');
  await page.goto(`${inject('siteUrl')}${fragment}`);
  await expect.poll(() => title(page).inputValue()).toBe('Sent');
  expect(await page.getByRole('alertdialog').count()).toBe(0);
  // The example gave way: the list has the book of the link alone.
  await page.getByRole('button', { name: 'Books on this machine' }).click();
  const shelf = page.getByRole('dialog', { name: 'Books on this machine' });
  await shelf.getByText('Sent').first().waitFor();
  expect(await shelf.getByText(example).count()).toBe(0);
});

/** Mesh cells of each pour that the page begins, from its first moment on. */
const watchPours = () => {
  const begun: number[] = [];
  Object.assign(globalThis, { begun });
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (this: Worker, ...sent: Parameters<typeof post>) {
    const [message] = sent;
    if (message?.type === 'APPLY' && message.path?.join() === 'run')
      begun.push(message.argumentList[0].value.computation.meshCells);
    post.apply(this, sent);
  } as typeof post;
};
const begunPours = (page: Page) =>
  page.evaluate(() => (globalThis as unknown as { begun: readonly number[] }).begun);

test('at a first visit a link opens its book at once, and no pour of the example is begun', async () => {
  const examples: string[] = [];
  const firstVisit = (address: string) =>
    openPage({
      address,
      prepare: async (context) => {
        await context.addInitScript(watchPours);
        context.on('request', (request) => {
          if (/\.pourbook\.json$/.test(request.url())) examples.push(request.url());
        });
      },
    });
  const meshCells = 43;
  const book = quickBook('Sent to a class');
  const cells = book.cells.map((cell) =>
    cell.kind === 'pour' ? { ...cell, computation: { ...cell.computation, meshCells } } : cell,
  );
  const fragment = await linkOf(writeBook({ ...book, cells }));
  const linked = await firstVisit(`${inject('siteUrl')}${fragment}`);
  await expect.poll(() => title(linked).inputValue()).toBe('Sent to a class');
  expect(await linked.getByRole('alertdialog').count()).toBe(0);
  // The two pours of the book are alike, and computed once.
  await expect.poll(() => begunPours(linked), { timeout: 30_000 }).toEqual([meshCells]);
  await waitUntilFresh(linked);
  expect(await begunPours(linked)).toEqual([meshCells]);
  expect(examples).toEqual([]);
  expect(await linked.evaluate(() => location.hash)).toBe('');
  // It is kept as the visitor's own, and asked for no more.
  await kept(linked).waitFor();
  await linked.reload();
  await expect.poll(() => title(linked).inputValue()).toBe('Sent to a class');
  expect(examples).toEqual([]);

  // Without the link, and with one that is cut short, the example comes and is computed: the watch sees it.
  const plain = await firstVisit(inject('siteUrl'));
  await expect.poll(async () => (await begunPours(plain)).length, { timeout: 30_000 }).toBeGreaterThan(0);
  expect(examples.length).toBeGreaterThan(0);
  const cut = await firstVisit(`${inject('siteUrl')}${fragment!.slice(0, 90)}`);
  await cut.getByRole('alert').getByText('The book in the link could not be opened.').waitFor();
  expect(await cut.locator('[data-cell]').count()).toBeGreaterThan(0);
});

test('a file dropped on the page is opened; one from a newer program is refused and harms nothing', async () => {
  const page = await openPage({ isBare: true });
  const drop = (name: string, text: string) =>
    page.evaluate(
      ([name, text]) => {
        const data = new DataTransfer();
        data.items.add(new File([text!], name!, { type: 'application/json' }));
        for (const type of ['dragover', 'drop'])
          document.body.dispatchEvent(
            new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }),
          );
      },
      [name, text],
    );
  await kept(page).waitFor();
  await drop('dropped.pourbook.json', file('Dropped').text);
  await expect.poll(() => title(page).inputValue()).toBe('Dropped');
  await drop('newer.pourbook.json', file('Newer').text.replace('"version": 1', '"version": 7'));
  await page.getByRole('alert').getByText('newer.pourbook.json could not be opened.').waitFor();
  expect(await page.getByRole('alert').textContent()).toContain('saved by a newer Quietpour');
  expect(await title(page).inputValue()).toBe('Dropped');
});

test('storage that refuses is told, and the book stays on the page', async () => {
  const page = await openPage({
    isBare: true,
    prepare: async (context) => {
      await context.addInitScript(() => {
        const refuse = () => {
          throw new DOMException('no room', 'QuotaExceededError');
        };
        IDBObjectStore.prototype.put = refuse;
      });
    },
  });
  await page.getByRole('alert').getByText('no room left to keep the book').waitFor();
  await openBookFile(page, file('Homeless'));
  await expect.poll(() => title(page).inputValue()).toBe('Homeless');
  await page.getByRole('alert').getByText('no room left to keep the book').waitFor();
  await page.locator('header').getByText('not kept: save as a file').waitFor();
});

/** A book with a cell of every kind that shows results, on meshes and a study that are soon done. */
function handedOut(): Book {
  const book = quickBook('Replayed');
  const pour = firstOf(book, 'pour').id;
  const cell = <K extends CellKind>(kind: K, part: Partial<Extract<Cell, { kind: K }>>) => ({
    ...(newCell(kind, book) as Extract<Cell, { kind: K }>),
    ...part,
  });
  const axes = [
    { setting: 'tilt.time', from: 1.5, to: 6, points: 3 },
    { setting: 'tilt.start', from: fromDegrees(10), to: fromDegrees(40), points: 3 },
  ];
  const study = {
    axes,
    figure: 'peakFrontSpeed' as const,
    meshCells: MESH_CELLS_RANGE.least,
    repeatability: [],
  };
  return [
    cell('study', { pour, study }),
    cell('castings', {
      castings: [{ ...EMPTY_ROW, pour, good: 7, bad: { ...NO_FAULTS, fold: 2 }, remark: 'first batch' }],
    }),
    cell('guess', {
      pours: [pour],
      ask: 'speed call',
      question: 'Under or over?',
      picked: 'under',
      given: true,
    }),
    cell('shop card', { pour, remark: 'for the wall' }),
  ].reduce<Book>(addCell, book);
}

/** Saves the open book as a page and opens it, as somebody would who was handed it. */
async function savedPage(page: Page): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a page that plays' }).click();
  const path = join(mkdtempSync(join(inject('profiles'), 'page-')), 'book.html');
  writeFileSync(path, readFileSync(await (await saving).path()));
  return path;
}

test('the saved page opens from the disk without a network, replays its pours and shows what the book found', async () => {
  const page = await openPage({ book: fileOf(handedOut()).text });
  const study = cellsOf(page, 'study');
  const begin = study.getByRole('button', { name: 'Pour this study' });
  const offered = async () => {
    await study.scrollIntoViewIfNeeded();
    return begin.isVisible();
  };
  await expect.poll(offered, { timeout: 60_000 }).toBe(true);
  await begin.click();
  await waitUntilFresh(page);
  const path = await savedPage(page);
  expect(statSync(path).size).toBeLessThan(900_000);
  const saved = await page.context().newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  saved.on('request', (request) => asked.push(request.url()));
  saved.on('console', (message) => complaints.push(message.text()));
  await saved.goto(`file://${path}`);
  const section = (name: string) => saved.locator('section', { has: saved.locator('h2', { hasText: name }) });
  const replay = saved.locator('[data-replay]').first();
  // A guess asks about this pour, and comes first.
  expect(await replay.isVisible()).toBe(false);
  for (const press of await saved.getByText(/^Show what the pours? did$/).all()) await press.press('Enter');
  const words = replay.locator('output');
  const first = await words.textContent();
  await replay.getByRole('slider').fill('1.5');
  expect(await words.textContent()).not.toBe(first);
  const metal = replay.locator('.metal');
  const still = await metal.getAttribute('d');
  await replay.getByRole('button', { name: 'Play' }).click();
  await expect.poll(() => metal.getAttribute('d')).not.toBe(still);

  await replay.getByRole('button', { name: 'Pause' }).click();
  // The chart of front speeds beside it: its marker stands where the pictures are, and nowhere while no front runs.
  expect(await replay.getByRole('img', { name: /^Front speed peaks at .* m\/s/ }).count()).toBe(1);
  await replay.getByText(/^critical 0\.\d\d m\/s/).waitFor();
  const now = replay.locator('.now');
  await replay.getByRole('slider').fill('0');
  expect(await now.isVisible()).toBe(false);
  const spots: number[] = [];
  const most = Number(await replay.getByRole('slider').getAttribute('max'));
  for (let time = 0; time <= most; time += 0.1) {
    await replay.getByRole('slider').fill(time.toFixed(2));
    const isRunning = (await words.textContent())!.includes('front');
    expect(await now.isVisible(), `at ${time} s`).toBe(isRunning);
    if (isRunning) spots.push((await now.boundingBox())!.x);
  }
  expect(spots.length).toBeGreaterThan(3);
  expect(spots.toSorted((a, b) => a - b)).toEqual(spots);

  const drawing = saved.getByRole('img', { name: /^Section .*basin .*die .* long, with/ });
  expect(await drawing.getByText('mouth', { exact: false }).first().isVisible()).toBe(true);
  const level = await cellsOf(page, 'section').locator('.with').textContent();
  await saved.getByText(squeezed(level)).first().waitFor();

  const sentence = await cellsOf(page, 'compare').locator('.verdict h3').first().textContent();
  expect(squeezed(await section('Compare').locator('.verdict').textContent())).toBe(squeezed(sentence));
  expect(
    await section('Compare')
      .getByRole('img', { name: /^Front speed along the die/ })
      .count(),
  ).toBe(1);
  expect(
    await section('Pour window')
      .getByRole('img', { name: /^Map of start angle against tilt time/ })
      .count(),
  ).toBe(1);
  await section('Castings log').getByRole('cell', { name: 'first batch' }).waitFor();
  await section('Guess first')
    .getByText(/You chose “stays under critical speed”/)
    .waitFor();
  const card = saved.getByRole('article', { name: /^Shop card/ });
  await card.getByText('for the wall').waitFor();
  expect(await card.getByText('Do not pour by this card').count()).toBe(0);

  expect(await seriousBarriers(saved)).toEqual([]);
  await picture(saved, 'saved-page');
  await saved.emulateMedia({ colorScheme: 'dark' });
  await saved.setViewportSize({ width: 390, height: 844 });
  // A bar at the side, where a browser has one, takes its room from these.
  expect(await saved.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(await tooWide(saved)).toEqual([]);
  const folds = saved.getByRole('group', { name: 'Surface folding events' }).first();
  const cure = (await folds.locator('td').last().boundingBox())!;
  expect(cure.x + cure.width).toBeLessThanOrEqual(390);
  // Read from side to side, not squeezed into a column.
  expect(cure.width).toBeGreaterThan(300);
  expect(await seriousBarriers(saved)).toEqual([]);
  await picture(saved, 'saved-page-phone');
  expect(asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
  expect(complaints).toEqual([]);
});

/** Tables that run out at the side of the page. */
const tooWide = (page: Page): Promise<(string | null)[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.table-box')]
      .filter((box) => box.scrollWidth > box.clientWidth)
      .map((box) => box.getAttribute('aria-label')),
  );

const squeezed = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

// Set offline by its protocol, Firefox does not ask the service worker.
test.skipIf(isFirefox)(
  'after the first visit the page opens without a network, with the book as it was',
  async () => {
    const page = await openPage({ isKept: true, expectedErrors: /ERR_INTERNET_DISCONNECTED|Failed to load/ });
    await openBookFile(page, poured('Offline'));
    await rename(page, 'In the cellar');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.context().setOffline(true);
    await page.reload();
    await expect.poll(() => title(page).inputValue(), { timeout: 15_000 }).toBe('In the cellar');
    await waitUntilFresh(page);
  },
);
