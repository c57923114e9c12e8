import { expect, test } from 'vitest';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();

test.each([
  [1440, 'light'],
  [1440, 'dark'],
  [390, 'light'],
  [390, 'dark'],
] as const)(
  'at %i px, %s, nothing serious stands in the way, and nothing is wider than the page',
  async (width, scheme) => {
    const page = await openPage({ width, scheme });
    await page.locator('main .cells').waitFor();
    await page.waitForTimeout(1000);
    await picture(page, `page-${width}-${scheme}`);
    expect(await seriousBarriers(page)).toEqual([]);
    const overhang = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overhang).toBeLessThanOrEqual(0);
  },
);
