import { expect, test } from 'vitest';
import { isFirefox } from './helpers/launch';
import { useSite } from './helpers/openPage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openPage = useSite();

test('the bench leads to the guide, its pages to each other and to their headings, and back', async () => {
  const page = await openPage({ isBare: true });
  const contents = page.getByRole('complementary', { name: 'Contents and tools' });
  await contents.getByRole('link', { name: 'Guide and glossary' }).click();
  await page.getByRole('heading', { level: 1, name: 'Guide and glossary' }).waitFor();
  await page.getByRole('link', { name: 'User guide' }).click();
  await page.getByRole('heading', { level: 1, name: 'User guide' }).waitFor();
  // The page has its style: the list stands beside the text, and the text off the edge.
  const list = (await page.getByRole('navigation', { name: 'Guide' }).first().boundingBox())!;
  const text = (await page.locator('main').boundingBox())!;
  expect(list.x).toBeGreaterThan(100);
  expect(list.x + list.width).toBeLessThanOrEqual(text.x);
  const pictures = page.locator('article img');
  await expect.poll(() => pictures.count()).toBe(12);
  const drawn = () =>
    pictures.evaluateAll((all) => all.every((one) => (one as HTMLImageElement).naturalWidth > 0));
  await expect.poll(drawn).toBe(true);

  // A link between documents that names a heading, followed to it.
  await page.locator('article').locator('a[href="../glossary/#metal-and-skin"]').first().click();
  const heading = page.getByRole('heading', { name: 'Metal and skin' });
  await heading.waitFor();
  await expect.poll(async () => Math.round((await heading.boundingBox())!.y)).toBeLessThan(200);
  expect(await page.getByRole('rowheader', { name: /^capillary stand/ }).count()).toBe(1);
  expect(await page.locator('nav [aria-current="page"]').first().textContent()).toBe('Glossary');

  await page.getByRole('link', { name: 'Back to the book' }).click();
  await page.locator('[data-cell]').first().waitFor();
});

test('no link of the guide leads nowhere', async () => {
  const page = await openPage({ isBare: true });
  await page.goto(new URL('guide/', page.url()).href);
  const pages = await page
    .locator('main a')
    .evaluateAll((all) => all.map((one) => (one as HTMLAnchorElement).href));
  expect(pages.length).toBeGreaterThan(10);
  for (const name of ['verification', 'overview', 'contributors'])
    expect(pages.some((address) => address.endsWith(`/guide/${name}/`))).toBe(true);
  const lost: string[] = [];
  for (const address of pages) {
    await page.goto(address);
    const found = await page.evaluate(async () => {
      const links = [...document.querySelectorAll<HTMLAnchorElement>('a[href]')].filter(
        ({ origin }) => origin === location.origin,
      );
      const answers = await Promise.all(
        [...new Set(links.map(({ origin, pathname }) => origin + pathname))].map(async (way) => {
          const response = await fetch(way);
          return [way, response.ok ? await response.text() : null] as const;
        }),
      );
      const known = new Map(answers);
      return links
        .filter(({ origin, pathname, hash }) => {
          const there = known.get(origin + pathname);
          return !there || (hash.length > 1 && !there.includes(`id="${decodeURIComponent(hash.slice(1))}"`));
        })
        .map(({ href }) => href);
    });
    lost.push(...found.map((href) => `${address} -> ${href}`));
  }
  expect(lost).toEqual([]);
});

test('a document that another names is a link in it: the page of what was checked, the overview, the form of a book', async () => {
  const page = await openPage({ isBare: true });
  const guide = new URL('guide/', page.url()).href;
  await page.goto(`${guide}overview/`);
  await page.locator('article').getByRole('link', { name: 'verification.md' }).click();
  await page.getByRole('heading', { level: 1, name: 'Verification' }).waitFor();
  await page.goto(`${guide}about/`);
  await page.locator('article').getByRole('link', { name: 'docs/overview.md' }).click();
  await page.getByRole('heading', { level: 1, name: 'Overview' }).waitFor();
  await page.goto(`${guide}book-file/`);
  const form = page.locator('article').getByRole('link', { name: 'JSON Schema' }).first();
  const answer = await page.request.get(await form.evaluate((link: HTMLAnchorElement) => link.href));
  expect((await answer.json()).$schema).toContain('json-schema.org');
});

test('the page of what was checked fetches a drawing when it is scrolled to, and nothing moves then', async () => {
  const page = await openPage({ isBare: true });
  const drawings = page.locator('article img');
  const fetched: string[] = [];
  page.on('response', (response) => {
    if (response.url().endsWith('.svg')) fetched.push(response.url());
  });
  await page.goto(new URL('guide/verification/', page.url()).href);
  const count = await drawings.count();
  expect(count).toBeGreaterThan(10);
  expect(fetched.length).toBeLessThan(count);
  const last = drawings.last();
  const box = () =>
    last.evaluate((one) => ({
      height: one.clientHeight,
      top: Math.round(one.getBoundingClientRect().top + scrollY),
    }));
  const before = await box();
  expect(before.height).toBeGreaterThan(100);
  await last.scrollIntoViewIfNeeded();
  await expect.poll(() => last.evaluate((one) => (one as HTMLImageElement).naturalWidth)).toBeGreaterThan(0);
  expect(await box()).toEqual(before);
});

test('on a phone the menu leads to the guide, which is read without scrolling sideways, in light and dark', async () => {
  const page = await openPage({ isBare: true, width: 390, height: 844 });
  await page.getByRole('button', { name: 'Contents' }).click();
  await page
    .getByRole('dialog', { name: 'Contents' })
    .getByRole('link', { name: 'Guide and glossary' })
    .click();
  await page.getByRole('heading', { level: 1, name: 'Guide and glossary' }).waitFor();
  const folder = page.url();
  for (const [name, heading] of [
    ['', 'Guide and glossary'],
    ['user-guide/', 'User guide'],
    ['glossary/', 'Glossary'],
    ['what-the-numbers-mean/', 'What the numbers mean, and what they do not'],
    ['model/', 'Model'],
    ['verification/', 'Verification'],
    ['overview/', 'Overview'],
  ] as const) {
    await page.goto(`${folder}${name}`);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    for (const scheme of ['light', 'dark'] as const)
      for (const width of [390, 1440]) {
        // The longest page is looked at twice, since it is looked at for long.
        if (name === 'verification/' && (width === 390) !== (scheme === 'light')) continue;
        await page.emulateMedia({ colorScheme: scheme });
        await page.setViewportSize({ width, height: 900 });
        await page.reload();
        const overhang = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(overhang, `${name} at ${width} px`).toBeLessThanOrEqual(0);
        // The list of the guide beside the text or folded above it, never both: the page has its rules.
        const isBeside = page.getByRole('navigation', { name: 'Guide', exact: true }).isVisible();
        const isFolded = page.getByText('All of the guide').isVisible();
        const isPage = name !== '';
        expect([await isBeside, await isFolded]).toEqual([isPage && width === 1440, isPage && width === 390]);
        expect(await seriousBarriers(page), `${name} at ${width} px in ${scheme}`).toEqual([]);
        await picture(page, `guide-${name.replace('/', '') || 'list'}-${width}-${scheme}`);
      }
  }
});

test.skipIf(isFirefox)(
  'after the first visit the guide opens without a network, with the pictures that were seen',
  async () => {
    const page = await openPage({
      isKept: true,
      isBare: true,
      expectedErrors: /ERR_INTERNET_DISCONNECTED|Failed to load/,
    });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    const bench = page.url();
    const pictures = page.locator('article img');
    const drawn = () =>
      pictures.evaluateAll(
        (all) => all.length > 0 && all.every((one) => (one as HTMLImageElement).naturalWidth > 0),
      );
    await page.goto(new URL('guide/user-guide/', bench).href);
    await expect.poll(drawn).toBe(true);
    // The longest page is not put by before it is read.
    const isPutBy = () =>
      page.evaluate(async () => Boolean(await caches.match(new URL('../verification/', location.href).href)));
    expect(await isPutBy()).toBe(false);
    await page.goto(new URL('guide/verification/', bench).href);
    await expect.poll(isPutBy).toBe(true);

    await page.context().setOffline(true);
    await page.goto(new URL('guide/verification/#what-is-not-met', bench).href);
    await page.getByRole('heading', { name: 'What is not met' }).waitFor();
    await page.goto(new URL('guide/', bench).href);
    await page.getByRole('link', { name: 'Glossary' }).click();
    await page.getByRole('heading', { level: 1, name: 'Glossary' }).waitFor();
    await page.goto(new URL('guide/user-guide/', bench).href);
    await expect.poll(drawn).toBe(true);
    await page.getByRole('link', { name: 'Back to the book' }).click();
    await page.locator('[data-cell]').first().waitFor();
  },
);
