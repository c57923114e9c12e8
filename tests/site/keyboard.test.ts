import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { shownFigures, waitUntilFresh } from './helpers/bench';
import { useSite } from './helpers/openPage';

const openPage = useSite();

/** More fields than any cell has, fewer than would take long. */
const MOST_STEPS = 120;

/** What has the focus, by its name; a field for text says that it is one. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const here = document.activeElement;
    if (!(here instanceof HTMLElement)) return '';
    const labels = here instanceof HTMLInputElement ? [...(here.labels ?? [])] : [];
    const name = (here.getAttribute('aria-label') ?? labels[0]?.textContent ?? here.textContent ?? '').trim();
    return here instanceof HTMLInputElement && here.type === 'text' ? `field ${name}` : name;
  });

async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let step = 0; step < MOST_STEPS; step++) {
    await page.keyboard.press('Tab');
    const here = await focused(page);
    if (typeof name === 'string' ? here === name : name.test(here)) return;
  }
  throw new Error(`Tab does not come to ${name} within ${MOST_STEPS} steps.`);
}

/** Goes to a cell by its name, as F2 does. */
async function goTo(page: Page, name: string): Promise<void> {
  await page.keyboard.press('F2');
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect
    .poll(() =>
      page.evaluate(
        () =>
          document.activeElement?.closest('[data-cell]')?.querySelector<HTMLTextAreaElement>('.name textarea')
            ?.value,
      ),
    )
    .toBe(name);
}

const pours = async (page: Page): Promise<string[]> => [
  ...new Set((await shownFigures(page)).map(({ pour }) => pour)),
];

test('an example is opened, its charge changed, its pours run and compared, and its card printed without a pointer', async () => {
  const page = await openPage({
    isBare: true,
    prepare: async (context) => {
      await context.addInitScript(() => {
        window.print = () => {
          document.documentElement.dataset['printed'] = String(
            document.querySelectorAll('.printed-card').length,
          );
        };
      });
    },
  });
  await page.locator('[data-cell]').first().waitFor();
  await tabTo(page, 'Example books');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Level start against uphill start');
  await page.keyboard.press('Enter');
  await page.getByRole('status').filter({ hasText: 'Level start against uphill start opened.' }).waitFor();
  await waitUntilFresh(page);
  const before = await shownFigures(page);

  await goTo(page, 'The same weight, flush');
  await tabTo(page, 'field mass');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('0.72');
  await page.keyboard.press('Enter');
  await expect.poll(() => shownFigures(page), { timeout: 30_000 }).not.toEqual(before);
  await waitUntilFresh(page);

  await goTo(page, 'Three starts, one arm');
  await tabTo(page, 'Which pours to compare');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Uphill, flush basin');
  expect(await pours(page)).toHaveLength(3);
  await page.keyboard.press('Space');
  await expect.poll(() => pours(page), { timeout: 10_000 }).toHaveLength(2);

  await goTo(page, 'For the next shift');
  await tabTo(page, 'Print this card');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.documentElement.dataset['printed'])).toBe('1');
});
