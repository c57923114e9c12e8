import { expect, test } from 'vitest';
import { useSite } from './helpers/openPage';

const openPage = useSite();

test('dragging the valve open moves the curve of a machine tilt at once', async () => {
  const page = await openPage();
  await page
    .locator('label', { hasText: /^\s*machine\s*$/ })
    .first()
    .click();
  const valve = page.locator('.valve input').first();
  const said = page.locator('.dial p').first();
  const seconds = async (): Promise<number> =>
    Number(/in ([\d.]+) s/.exec((await said.textContent()) ?? '')?.[1]);
  await valve.fill('0.5');
  await expect.poll(seconds).toBeGreaterThan(3);
  const nearlyShut = await seconds();
  await valve.fill('2.5');
  await expect.poll(seconds).toBeLessThan(nearlyShut / 2);
});

test('a file of readings with decimal commas becomes a tilt, and says what it was taken for', async () => {
  const page = await openPage();
  await page
    .locator('label', { hasText: /^\s*measured\s*$/ })
    .first()
    .click();
  const lines = Array.from({ length: 120 }, (_, i) => {
    const share = Math.min(1, Math.max(0, (i - 10) / 100));
    return `${(i * 0.04).toFixed(3)};${(-80 * share ** 2 * (3 - 2 * share)).toFixed(2)}`.replaceAll('.', ',');
  });
  const buffer = Buffer.from(['t (s);angle (°)', ...lines].join('\n'));
  await page
    .locator('input[type=file][accept*="csv"]')
    .first()
    .setInputFiles({ name: 'dry-run.csv', mimeType: 'text/csv', buffer });
  await expect.poll(() => page.locator('.file').first().textContent()).toContain('decimal comma; 120 rows');
  await expect.poll(() => page.locator('.dial p').first().textContent()).toContain('−80.0°');
});
