import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { onePour } from './helpers/sampleFile';

const openBook = useOnePage();
const betterTilt = readFileSync(
  fileURLToPath(new URL('../../static/better-tilt.pourbook.json', import.meta.url)),
  'utf8',
);
const kindOf = (page: Page, kind: string) =>
  page.locator('label', { hasText: new RegExp(`^\\s*${kind}\\s*$`) });

test('dragging the valve open moves the curve of a machine tilt at once', async () => {
  const page = await openBook(onePour());
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

  // A pour that takes it tells how the machine fell with the metal in it.
  const fall = page.locator('[data-part="machine fall"]').first();
  await expect.poll(() => fall.textContent(), { timeout: 60_000 }).toMatch(/met its stop after \d/);
});

test('knots of a drawn tilt are dragged on the chart, as one step back', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'drawn').first().click();
  const time = page.getByRole('textbox', { name: 'knot 5 time' }).first();
  await time.waitFor();
  const before = Number(await time.inputValue());
  const knot = page.locator('.chart .knot').nth(4);
  await knot.scrollIntoViewIfNeeded();
  const box = (await knot.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 6, y + 4);
  await page.mouse.move(x + 14, y + 8);
  await page.mouse.up();
  await expect.poll(async () => Number(await time.inputValue())).toBeGreaterThan(before);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => Number(await time.inputValue())).toBe(before);

  // Out of the machine's limits, the nearest it can do is offered, and taken.
  await page.getByText('What the machine can do').first().click();
  const highest = page.getByRole('textbox', { name: 'highest start' }).first();
  await highest.fill('-5');
  await highest.press('Enter');
  await page.getByRole('button', { name: 'Take the nearest the machine can do' }).first().click();
  await expect.poll(() => page.getByRole('textbox', { name: 'start at' }).first().inputValue()).toBe('−5.0');
  expect(await page.getByRole('button', { name: 'Take the nearest the machine can do' }).count()).toBe(0);
});

test('once the nearest tilt is taken by keyboard, the focus is in the field that was mended', async () => {
  const page = await openBook(onePour());
  const take = page.getByRole('button', { name: 'Take the nearest the machine can do' });
  const focused = (): Promise<string | undefined> =>
    page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent ?? undefined);
  for (const [name, wrong, mended] of [
    ['rate', '500', '45.0'],
    ['end at', '-140', '−100.0'],
  ] as const) {
    const field = page.getByRole('textbox', { name, exact: true }).first();
    await field.fill(wrong);
    await take.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => field.inputValue()).toBe(mended);
    expect(await focused()).toBe(name);
  }
  // A machine's limit is mended in its stops.
  await kindOf(page, 'machine').first().click();
  await page.getByRole('textbox', { name: 'start at' }).first().fill('80');
  await take.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => take.count()).toBe(0);
  expect(await focused()).toBe('start at');
});

test('a steady tilt is given by its time as well, and a time that no rate gives is refused beside it', async () => {
  const page = await openBook(onePour());
  const rate = page.getByRole('textbox', { name: 'rate', exact: true }).first();
  const takes = page.getByRole('textbox', { name: 'takes' }).first();
  const said = page.locator('.dial p').first();
  // Turned by 120°, and half the smoothing at either end: 120/8 + 0.3.
  expect(await takes.inputValue()).toBe('15.30');
  await takes.fill('12.3');
  await takes.press('Enter');
  await expect.poll(() => rate.inputValue()).toBe('10.0');
  expect(await takes.inputValue()).toBe('12.30');
  await expect.poll(() => said.textContent()).toContain('12.3 s');

  await takes.fill('0.2');
  const refusal = page.getByText('12.3 s is still used');
  await refusal.waitFor();
  expect(await rate.inputValue()).toBe('10.0');
  await rate.fill('20');
  await expect.poll(() => takes.inputValue()).toBe('6.30');
  expect(await refusal.count()).toBe(0);
});

test('a new metal is called by what it is, and a bronze chosen for it takes that name', async () => {
  const page = await openBook(onePour());
  await page
    .getByRole('button', { name: /^metal/ })
    .last()
    .click();
  const metals = page.locator('[data-kind="metal"]');
  const name = metals.last().getByRole('textbox', { name: /name/i }).first();
  await expect.poll(() => name.inputValue()).toBe('A356 2');
  await metals
    .last()
    .locator('label', { hasText: /^\s*aluminium bronze\s*$/ })
    .click();
  await expect.poll(() => name.inputValue()).toBe('Aluminium bronze');
});

test('a front-led tilt is worked out in its pour, and its stages are taken', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'front-led').first().click();
  const led = page.locator('.led').first();
  await expect
    .poll(() => led.textContent(), { timeout: 60_000 })
    .toMatch(/the front peaks at \d\.\d\d\sm\/s/);
  const share = led.getByRole('textbox', { name: 'front speed wanted, of critical' });
  await share.fill('55');
  await share.press('Enter');
  await expect.poll(() => led.textContent(), { timeout: 60_000 }).toMatch(/They stray from it by \d\.\d°/);
  await led.getByRole('button', { name: 'Take these stages' }).click();
  await expect.poll(() => page.locator('input[type=radio][value=staged]').first().isChecked()).toBe(true);
  await kindOf(page, 'front-led').first().click();
  await expect.poll(() => share.inputValue()).toBe('55');
});

test('a machine is fitted to a measured tilt of the book, and set for a wanted one', async () => {
  const page = await openBook(betterTilt);
  await kindOf(page, 'machine').nth(1).click();
  await page.getByText('Fit to a measured tilt').first().click();
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  await expect.poll(() => page.locator('.machine').textContent()).toContain('as fitted by');
  const settings = page.locator('details', { hasText: 'Settings for a wanted time or tilt' });
  await settings.locator('summary').click();
  await settings.locator('label', { hasText: 'another tilt' }).click();
  await settings.getByRole('button', { name: 'Find the settings' }).click();
  await expect.poll(() => settings.locator('li').allTextContents()).toHaveLength(1);
  expect(await settings.locator('li').textContent()).toMatch(/valve open \d/);
  await page.getByRole('button', { name: 'Take these settings' }).click();

  // One machine in the shop: its limits go to every tilt, as one step.
  const highest = page
    .locator('[data-kind="tilt"]')
    .getByRole('textbox', { name: 'highest start', includeHidden: true });
  await page.getByText('What the machine can do').first().click();
  await highest.first().fill('12');
  await page.getByRole('button', { name: 'Take this machine for all tilts' }).first().click();
  const values = () =>
    highest.evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  await expect.poll(async () => new Set(await values())).toEqual(new Set(['+12.0']));
  expect((await values()).length).toBeGreaterThan(1);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => new Set(await values()).size).toBe(2);
});

test('the valve alone is set for a wanted time, and a weight only where it is ticked, with its caution', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'machine').first().click();
  const settings = page.locator('details', { hasText: 'Settings for a wanted time or tilt' });
  await settings.locator('summary').click();
  const time = settings.getByRole('textbox', { name: 'from stop to stop in' });
  const found = settings.getByRole('status');
  const items = (): Promise<string[]> => settings.locator('li').allTextContents();
  const find = settings.getByRole('button', { name: 'Find the settings' });
  // What may change stands side by side where there is room.
  const ticks = settings.getByRole('group', { name: 'may change' }).getByRole('checkbox');
  const tops = await ticks.evaluateAll((all) =>
    all.map((one) => Math.round(one.getBoundingClientRect().top)),
  );
  expect(tops.length).toBeGreaterThan(1);
  expect(new Set(tops).size).toBe(1);
  await picture(page, 'may-change');
  await time.fill('9');
  await find.click();
  await expect.poll(() => found.textContent()).toMatch(/takes (8\.9|9\.0|9\.1)\d* s from stop to stop/);
  expect(await items()).toEqual([expect.stringMatching(/^valve open 0\.\d\d turns \(now 0\.50 turns\)$/)]);
  // What it is now is what it is now, and not when it was asked.
  await page.locator('.valve input').first().fill('2');
  await expect.poll(items).toEqual([expect.stringContaining('(now 2.00 turns)')]);
  await expect.poll(() => found.textContent()).toContain('This was asked before the last change.');
  await settings.getByRole('button', { name: 'Take these settings' }).click();
  await expect.poll(items).toEqual([expect.stringContaining('as it is now')]);
  expect(await page.locator('.dial p').first().textContent()).toMatch(/in (8\.9|9\.0|9\.1)/);

  // Quicker than the valve lets it be: out of reach, until a weight may change.
  await time.fill('0.5');
  await find.click();
  await expect.poll(() => found.textContent()).toContain('it does not come with what may change');
  expect(await settings.textContent()).not.toContain('Caution');
  // What brings it nearer is offered; once it stands so, nothing that may change brings it any nearer, and that is said.
  const take = settings.getByRole('button', { name: 'Take these settings' });
  await take.click();
  await find.click();
  await expect
    .poll(() => found.textContent())
    .toMatch(
      /as it stands, and with what may change it comes no nearer to 0\.50? s\. To turn quicker it lacks drive, .*, with the valve as far as it goes/,
    );
  expect([await take.count(), await settings.locator('li').count()]).toEqual([0, 0]);
  await picture(page, 'settings-out-of-reach');
  await settings.getByLabel('weight 1').check();
  await find.click();
  await settings.getByText('Caution: more weight on the driving side.').waitFor();
  expect((await items())[1]).toMatch(/^weight 1 \d+\.\d kg \(now 10\.0 kg\)/);

  await time.fill('0');
  await settings.getByText('Give 0.2 to 60 s.').waitFor();
  expect(await find.isDisabled()).toBe(true);
});

test('a study whose tilt was made a machine says what it lacks, and varies the valve when asked to', async () => {
  const page = await openBook(onePour());
  await page.locator('#pick-study').click();
  const study = page.locator('[data-kind="study"]');
  await study.scrollIntoViewIfNeeded();
  const across = study.getByRole('combobox', { name: 'across' });
  await study.getByText('What this study varies, and how far').click();
  await expect.poll(() => across.inputValue()).toBe('tilt.time');
  await kindOf(page, 'machine').first().click();
  await study.getByText('This pour has no tilt time that could be set.').waitFor();
  await study.getByRole('button', { name: 'Vary what suits this pour' }).click();
  await expect.poll(() => across.inputValue()).toBe('tilt.valve');
  await expect.poll(() => study.getByText(/^It takes/).count()).toBe(1);
});

test('on a wide page the curve of a machine stays in view beside its long list of inputs', async () => {
  const page = await openBook(onePour());
  await kindOf(page, 'machine').first().click();
  const tilt = page.locator('[data-kind="tilt"]').first();
  for (const title of [
    'Weights that turn',
    'Cylinder and linkage',
    'Valve, line and oil',
    'Bearing and stop',
  ])
    await tilt.getByText(title, { exact: true }).click();
  const chart = tilt.locator('.drawn svg').first();
  const stop = tilt.getByRole('textbox', { name: 'cushion holds' });
  const topOf = (): Promise<number> => chart.evaluate((node) => node.getBoundingClientRect().top);
  await stop.evaluate((node) => node.scrollIntoView({ block: 'end' }));
  await expect.poll(topOf).toBeGreaterThanOrEqual(0);
  expect(await topOf()).toBeLessThan(200);
  // Where the two stand one below the other the chart goes as the page goes.
  await page.setViewportSize({ width: 390, height: 844 });
  await stop.evaluate((node) => node.scrollIntoView({ block: 'end' }));
  await expect.poll(topOf).toBeLessThan(-200);
});
