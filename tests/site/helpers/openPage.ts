import type { BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, afterEach, expect, inject } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { firstOf, sampleBook } from '../../book/sample';
import { coarseBook } from './coarseBook';
import { browserFor, type Manner } from './launch';

export interface PageWanted {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: Manner['scheme'];
  /** Before anything is loaded, e.g. to block a file. */
  readonly prepare?: (context: BrowserContext) => Promise<void>;
  /** Lets the page keep itself for use without a network; else every file comes from the server. */
  readonly isKept?: boolean;
  /** Lets things move; else as for users who want stillness. */
  readonly moves?: boolean;
  /** The example books as they come, their pours on fine meshes; else coarse, so that tests take seconds. */
  readonly isFine?: boolean;
  /** Begins with a book of one note, for a test that opens a book of its own: the first example costs seconds. */
  readonly isBare?: boolean;
  /** Begins with this book, the text of its file, as it is, in place of the first example. */
  readonly book?: string;
  /** Where the page is, when it is not the site of the tests itself. */
  readonly address?: string;
  /** As on a phone: touched with a finger. */
  readonly isTouched?: boolean;
  /** Complaints on the console that the test provokes. */
  readonly expectedErrors?: RegExp;
}

/** Opens the site in a fresh profile. When the test ends, it fails if the page complained on its console. */
export type OpenPage = (wanted?: PageWanted) => Promise<Page>;

/** Pages for a test file, closed after each test or after all. Call it at the top of the file. */
export function useSite(closed: 'after each' | 'after all' = 'after each'): OpenPage {
  let contexts: BrowserContext[] = [];
  let complaints: string[] = [];

  const closeAll = async (): Promise<void> => {
    await Promise.all(contexts.map(closeQuietly));
    contexts = [];
  };
  afterEach(async () => {
    const said = complaints;
    if (closed === 'after each') await closeAll();
    complaints = [];
    expect(said, 'the page complained on its console').toEqual([]);
  });
  afterAll(closeAll);
  return async ({
    width = 1440,
    height = 900,
    scheme = 'light',
    prepare,
    expectedErrors,
    isKept = false,
    moves = false,
    isFine = false,
    isBare = false,
    isTouched = false,
    book = isBare ? ONE_NOTE : undefined,
    address = inject('siteUrl'),
  } = {}) => {
    const browser = await browserFor({ scheme, moves });
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: scheme,
      reducedMotion: moves ? 'no-preference' : 'reduce',
      hasTouch: isTouched,
      serviceWorkers: isKept ? 'allow' : 'block',
    });
    contexts.push(context);
    if (!isFine && !isKept) await context.route(EXAMPLES, coarsely);
    if (book) await context.route(EXAMPLES, (route) => answer(route, book), { times: 1 });
    await prepare?.(context);
    const page = await context.newPage();
    collectComplaints(page, (text) => expectedErrors?.test(text) || complaints.push(text));
    await page.goto(address);
    return page;
  };
}

/** What the page still asks for when the test is over is let go. */
async function closeQuietly(context: BrowserContext): Promise<void> {
  await context.unrouteAll({ behavior: 'ignoreErrors' });
  await context.close();
}

/** Said because a test asked for it, not by the page. */
const BY_THE_TEST = /Service Worker registration blocked by Playwright/;

function collectComplaints(page: Page, keep: (text: string) => void): void {
  page.on('pageerror', (error) => keep(String(error)));
  page.on('console', (message) => {
    const isComplaint = message.type() === 'error' || message.type() === 'warning';
    if (isComplaint && !BY_THE_TEST.test(message.text())) keep(`${message.type()}: ${message.text()}`);
  });
}

const EXAMPLES = /\.pourbook\.json$/;
export const ONE_NOTE = writeBook({ title: 'One note', casting: '', cells: [firstOf(sampleBook(), 'note')] });

const answer = (route: Route, body: string): Promise<void> =>
  route.fulfill({ contentType: 'application/json', body });

/** Answers for an example book with the same book on a coarse mesh. */
async function coarsely(route: Route): Promise<void> {
  const response = await route.fetch();
  await answer(route, coarseBook(await response.text()));
}
