import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { waitUntilFresh } from './helpers/bench';
import { useSite } from './helpers/openPage';
import { twoPours } from './helpers/sampleFile';

const openPage = useSite();

/** Frames the browser drew in a stretch of playback, and how many of them showed a new picture. */
function watchFrames(
  page: Page,
  cell: string,
): Promise<{ frames: number; pictures: number; longest: number; seconds: number }> {
  return page.evaluate(
    (selector) =>
      new Promise((resolve) => {
        const root = document.querySelector(selector)!;
        const button = root.querySelector<HTMLButtonElement>('button[aria-label^="Play"]')!;
        const look = () =>
          [...root.querySelectorAll('.field svg path')].map((path) => path.getAttribute('d')).join();
        button.click();
        let before = '';
        let [frames, pictures, longest] = [0, 0, 0];
        const began = performance.now();
        let last = began;
        const count = (now: number) => {
          frames++;
          longest = Math.max(longest, now - last);
          last = now;
          const picture = look();
          if (picture !== before) pictures++;
          before = picture;
          if (now - began < 2000 && button.getAttribute('aria-label')?.startsWith('Pause'))
            requestAnimationFrame(count);
          else resolve({ frames, pictures, longest, seconds: (now - began) / 1000 });
        };
        requestAnimationFrame(count);
      }),
    cell,
  );
}

test('every frame of playback shows the pour further on, alone and in a comparison', async () => {
  const page = await openPage({ moves: true });
  await waitUntilFresh(page);
  for (const kind of ['pour', 'compare']) {
    const cell = page.locator(`[data-kind="${kind}"]`).first();
    await cell.locator('button[aria-label^="Play"]').scrollIntoViewIfNeeded();
    const { frames, pictures, longest, seconds } = await watchFrames(page, `[data-kind="${kind}"]`);
    console.info(
      `${kind}: ${(frames / seconds).toFixed(0)} frames a second over ${seconds.toFixed(1)} s, ${pictures} of ${frames} with a new picture, longest frame ${longest.toFixed(0)} ms`,
    );
    expect(pictures).toBeGreaterThan(frames * 0.8);
    expect(frames).toBeGreaterThan(10);
  }
});

test('a pointer over one chart moves the marker in the others, and the picture; a chart offers its files', async () => {
  const page = await openPage({ book: twoPours() });
  await waitUntilFresh(page);
  const pour = page.locator('[data-kind="pour"]').first();
  const slider = pour.getByRole('slider', { name: /time of the pour|^Time/i }).first();
  const plates = () => pour.locator('.cursor-words').allTextContents();
  await slider.scrollIntoViewIfNeeded();
  const before = await plates();
  const chart = pour.locator('svg.chart-svg[aria-label^="inclination."]');
  await chart.scrollIntoViewIfNeeded();
  const box = (await chart.boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
  await expect.poll(plates).not.toEqual(before);
  const pointed = await plates();
  expect(pointed.filter((words, index) => words !== before[index]).length).toBeGreaterThanOrEqual(2);

  const compare = page.locator('[data-kind="compare"]').first();
  const captions = () => compare.locator('.pictures .one p span').allTextContents();
  const still = await captions();
  const places = compare.locator('svg.chart-svg[aria-label^="front place"]');
  await places.scrollIntoViewIfNeeded();
  const at = (await places.boundingBox())!;
  await page.mouse.move(at.x + at.width * 0.7, at.y + at.height / 2);
  await expect
    .poll(async () => (await captions()).filter((words, index) => words !== still[index]).length)
    .toBe(still.length);

  await pour.locator('summary', { hasText: 'Save inclination' }).click();
  const isHeld = await pour
    .locator('button:visible', { hasText: 'Save numbers as CSV' })
    .evaluate(
      (button) => button.getBoundingClientRect().right <= button.parentElement!.getBoundingClientRect().right,
    );
  expect(isHeld, 'what is offered stands inside its frame').toBe(true);
});
