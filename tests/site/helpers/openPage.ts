import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { launchBrowser } from './launch';

export type Scheme = 'light' | 'dark';

export interface PageWanted {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: Scheme;
  /** Before anything is loaded, e.g. to block a file. */
  readonly prepare?: (context: BrowserContext) => Promise<void>;
  /** Complaints on the console that the test provokes. */
  readonly expectedErrors?: RegExp;
}

/** Opens the site in a fresh profile. When the test ends, it fails if the page complained on its console. */
export type OpenPage = (wanted?: PageWanted) => Promise<Page>;

/** One browser for a test file. Call it at the top of the file. */
export function useSite(): OpenPage {
  let browser: Browser;
  let contexts: BrowserContext[] = [];
  let complaints: string[] = [];

  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterEach(async () => {
    const said = complaints;
    await Promise.all(contexts.map((context) => context.close()));
    contexts = [];
    complaints = [];
    expect(said, 'the page complained on its console').toEqual([]);
  });
  afterAll(() => browser.close());

  return async ({ width = 1440, height = 900, scheme = 'light', prepare, expectedErrors } = {}) => {
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: scheme,
      reducedMotion: 'reduce',
    });
    contexts.push(context);
    await prepare?.(context);
    const page = await context.newPage();
    collectComplaints(page, (text) => expectedErrors?.test(text) || complaints.push(text));
    await page.goto(inject('siteUrl'));
    return page;
  };
}

function collectComplaints(page: Page, keep: (text: string) => void): void {
  page.on('pageerror', (error) => keep(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      keep(`${message.type()}: ${message.text()}`);
  });
}
