import { expect, inject, test } from 'vitest';

/**
 * A smoke test in Firefox, run only where it is asked for, since the project needs no second browser:
 *
 *   npm install --no-save puppeteer-core
 *   FIREFOX_PATH=/usr/bin/firefox-esr npm test -- --project site tests/site/firefox.test.ts
 */
const FIREFOX = process.env['FIREFOX_PATH'];
if (!FIREFOX)
  console.info('Not run: the smoke test in Firefox. FIREFOX_PATH names the program to run it in.');

/** What is used of the library, which is not among those the project installs. */
interface Handle {
  scrollIntoView(): Promise<void>;
  boundingBox(): Promise<{ x: number; y: number; width: number; height: number } | null>;
  evaluate<T>(look: (element: Element) => T): Promise<T>;
}
interface Page {
  on(event: 'console' | 'pageerror', told: (what: { type?(): string; text?(): string }) => void): void;
  goto(url: string): Promise<unknown>;
  waitForSelector(selector: string): Promise<Handle | null>;
  $$eval<T>(selector: string, look: (elements: Element[]) => T): Promise<T>;
  readonly mouse: { move(x: number, y: number): Promise<void>; down(): Promise<void>; up(): Promise<void> };
}
interface Browser {
  newPage(): Promise<Page>;
  close(): Promise<void>;
}
interface Library {
  launch(settings: Readonly<Record<string, unknown>>): Promise<Browser>;
}

async function library(): Promise<Library> {
  const name = 'puppeteer-core';
  const found = await import(/* @vite-ignore */ name).catch(() => null);
  if (!found) throw new Error(`${name} is needed to drive Firefox: npm install --no-save ${name}`);
  return found.default as Library;
}

const statesOf = (page: Page): Promise<string> =>
  page.$$eval('[data-cell][data-state]', (cells) =>
    [...new Set(cells.map((cell) => cell.getAttribute('data-state')))].join(),
  );

test.skipIf(!FIREFOX)(
  'in Firefox the page opens, runs its pours, and a corner is dragged, without a complaint',
  async () => {
    const browser = await (await library()).launch({
      browser: 'firefox',
      executablePath: FIREFOX,
      headless: true,
      defaultViewport: null,
      args: ['--width=1440', '--height=1200'],
    });
    try {
      const page = await browser.newPage();
      const complaints: string[] = [];
      page.on('pageerror', (error) => complaints.push(String(error)));
      page.on('console', (message) => {
        if (['error', 'warn', 'warning'].includes(message.type?.() ?? ''))
          complaints.push(message.text?.() ?? '');
      });
      await page.goto(inject('siteUrl'));
      await page.waitForSelector('[data-cell]');
      await expect.poll(() => statesOf(page), { timeout: 120_000, interval: 500 }).toBe('fresh');

      const corner = await page.waitForSelector('[data-kind="section"] [role="slider"][aria-label^="R3"]');
      if (!corner) throw new Error('The corner R3 is not drawn.');
      const words = () => corner.evaluate((element) => element.getAttribute('aria-valuetext'));
      const before = await words();
      await corner.scrollIntoView();
      const box = await corner.boundingBox();
      const [x, y] = [box!.x + box!.width / 2, box!.y + box!.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let step = 1; step <= 15; step++) await page.mouse.move(x, y - 2 * step);
      await page.mouse.up();
      await expect.poll(words).not.toBe(before);
      await expect.poll(() => statesOf(page), { timeout: 120_000, interval: 500 }).toBe('fresh');
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  },
);
