import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { firstOf, sampleBook } from '../book/sample';
import { useSite } from './helpers/openPage';

const openPage = useSite();

/** The examples as a book of one note: no pour is waited for. */
const NOTES = writeBook({ title: 'Notes', casting: '', cells: [firstOf(sampleBook(), 'note')] });
/** Named by the build; a newer build has another name. */
let isNewer = false;
let address = '';
const server = createServer(async (request, response) => {
  const answer = await fetch(new URL(request.url ?? '/', inject('siteUrl')));
  const body = Buffer.from(await answer.arrayBuffer());
  const isBook = request.url?.endsWith('.pourbook.json') ?? false;
  const isWorker = request.url?.startsWith('/service-worker.js') ?? false;
  response.writeHead(answer.status, {
    'content-type': answer.headers.get('content-type') ?? 'application/octet-stream',
    'cache-control': 'no-store',
  });
  if (isBook) response.end(NOTES);
  else response.end(isWorker && isNewer ? `${body.toString('utf8')}\n// A newer build.\n` : body);
});

beforeAll(async () => {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});
afterAll(() => new Promise<void>((resolve) => server.close(() => resolve())));

test('a newer version is offered, taken when it is asked for, and the work is kept', async () => {
  const page = await openPage({ isKept: true, address });
  const title = page.getByRole('textbox', { name: 'Title of the book' });
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await page.locator('[data-cell]').first().waitFor();
  await title.fill('Half written');

  isNewer = true;
  await page.evaluate(async () => void (await (await navigator.serviceWorker.getRegistration())?.update()));
  await page.getByText('A newer Quietpour has arrived.').waitFor();
  expect(await title.inputValue()).toBe('Half written');
  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Load it now' }).click()]);
  await expect.poll(() => title.inputValue()).toBe('Half written');
  expect(await page.getByText('A newer Quietpour has arrived.').count()).toBe(0);
});
