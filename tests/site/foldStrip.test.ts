import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inProject } from '../../src/setup/paths.js';
import { waitUntilFresh } from './helpers/bench';
import { coarseBook } from './helpers/coarseBook';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';

const openPage = useSite();

test('in a comparison the axis of folds spans what happened, and the rest is told', async () => {
  const book = coarseBook(readFileSync(inProject('static/two-tilts.pourbook.json'), 'utf8'));
  const page = await openPage({ book });
  await waitUntilFresh(page);
  const compare = page.locator('[data-kind="compare"]');
  await compare.scrollIntoViewIfNeeded();
  await compare.getByRole('radio', { name: 'inclination' }).check({ force: true });
  const strip = compare.getByRole('img', { name: /^Folds by inclination/ });
  await strip.waitFor();
  await strip.scrollIntoViewIfNeeded();
  await picture(page, 'fold-strip');
  const box = (await strip.boundingBox())!;
  const pins = await strip.locator('.pin-shape').evaluateAll((all) =>
    all.map((pin) => {
      const { left, width } = pin.getBoundingClientRect();
      return left + width / 2;
    }),
  );
  expect(pins.length).toBeGreaterThan(1);
  // The last fold stands in the right half, with a little left after it.
  expect(Math.max(...pins)).toBeGreaterThan(box.x + box.width / 2);
  expect(Math.max(...pins)).toBeLessThan(box.x + box.width - 20);
  expect(
    await compare.getByText(/^After .* nothing folds or fills any more; the pours go on to/).count(),
  ).toBe(1);
});
