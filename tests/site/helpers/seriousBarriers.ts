import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe finds serious or critical on the page as it stands, one line for each element. */
export async function seriousBarriers(page: Page): Promise<string[]> {
  // By evaluation, because the content policy refuses an added script.
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: typeof axe }).axe.run(document, { resultTypes: ['violations'] }),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`));
}
