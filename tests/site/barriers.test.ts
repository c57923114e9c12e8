import { expect, test } from 'vitest';
import { waitUntilFresh } from './helpers/bench';
import { coarseFirstExample } from './helpers/coarseBook';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openBook = useOnePage();

test.each(['light', 'dark'] as const)(
  'in %s, at 1440 and 390 px, nothing serious stands in the way, and nothing is wider than the page',
  async (scheme) => {
    const page = await openBook(coarseFirstExample());
    await page.emulateMedia({ colorScheme: scheme });
    await waitUntilFresh(page);
    for (const width of [1440, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await picture(page, `page-${width}-${scheme}`);
      expect(await seriousBarriers(page), `${width} px`).toEqual([]);
      const overhang = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(overhang, `${width} px`).toBeLessThanOrEqual(0);
    }
  },
);
