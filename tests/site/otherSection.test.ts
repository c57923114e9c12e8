import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell, replaceCell } from '$src/cells/edit';
import type { Book, PourCell, SectionCell } from '$src/cells/kinds';
import { taperedLever } from '$src/core/section/shapes';
import { firstOf, sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openBook = useOnePage();
const PATIENCE = { timeout: 60_000 };

const sample = sampleBook();
const lever: SectionCell = {
  ...firstOf(sample, 'section'),
  id: 'section-2',
  name: 'Lever',
  section: taperedLever(),
};
const pour: PourCell = firstOf(sample, 'pour');
/** The sample's first pour and what it takes, and another section that nothing takes yet. */
const kept = sample.cells.filter(
  ({ id, kind }) => ['section', 'metal', 'tilt', 'charge'].includes(kind) || id === pour.id,
);
const switched: Book = replaceCell(addCell({ ...sample, cells: kept }, lever), {
  ...pour,
  section: lever.id,
});

test(
  'a pour with the charge of another section says so, draws its section with that metal, and is given a charge of its own',
  PATIENCE,
  async () => {
    const page = await openBook(writeBook(switched));
    const [cell, section] = [page.locator(`#${pour.id}`), page.locator(`#${lever.id}`)];
    const note = cell.getByRole('note').filter({ hasText: 'was worked out for Section' });
    await note.waitFor();
    expect(await note.textContent()).toMatch(
      /Charge was worked out for Section, and is poured here\s+into Lever as the same metal: ([\d.]+\skg)/,
    );
    const poured = /same metal: ([\d.]+)/.exec((await note.textContent())!)![1]!;
    expect(await cell.getByRole('alert').count()).toBe(0);
    // The section shows the metal of the pour: no other charge beside it.
    await expect
      .poll(() => section.textContent())
      .toContain('Drawn with Pour, with the charge of another section');
    expect(await section.textContent()).not.toContain('No charge takes this section yet');
    expect(await section.locator('.fig', { hasText: /^charge/ }).textContent()).toContain(poured);
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await note.scrollIntoViewIfNeeded();
      await picture(page, `charge-of-another-section-${width}`);
      await section.locator('.figs').scrollIntoViewIfNeeded();
      await picture(page, `section-of-a-pour-${width}`);
    }
    expect(await seriousBarriers(page)).toEqual([]);

    await note.getByRole('button', { name: 'Make a charge for Lever' }).click();
    await expect.poll(() => note.count()).toBe(0);
    await expect.poll(() => section.textContent()).toContain('Drawn with Charge for Lever:');
    expect(await page.locator('[data-kind="charge"]').count()).toBe(2);
  },
);

test('a section without a charge does not call what it is drawn with a charge', async () => {
  const page = await openBook(writeBook({ ...sample, cells: [lever] }));
  const figures = page.locator('#section-2 .figs');
  await figures.waitFor();
  expect(await figures.textContent()).toMatch(/metal assumed.*a new charge adds a feeder/);
  expect(await figures.textContent()).not.toContain('charge needed');
  await picture(page, 'metal-assumed');
});

test('a corner that stops at its neighbour says why beside it and to those who do not see it', async () => {
  const page = await openBook(writeBook({ ...sample, cells: [firstOf(sample, 'section')] }));
  const corner = page.getByRole('slider', { name: /^R2,/ });
  await corner.waitFor();
  const words = 'stops at R3: move that first';
  const box = (await corner.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 200, box.y + box.height / 2, { steps: 5 });
  await page.locator('svg.drawing .plate', { hasText: words }).first().waitFor();
  await picture(page, 'corner-stops');
  await page.mouse.up();
  await expect
    .poll(() =>
      page
        .getByRole('status')
        .filter({ hasText: `R2 ${words}.` })
        .count(),
    )
    .toBe(1);
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => page.locator('svg.drawing .plate', { hasText: words }).count()).toBe(0);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.locator('svg.drawing .plate', { hasText: words }).first().waitFor();
});
