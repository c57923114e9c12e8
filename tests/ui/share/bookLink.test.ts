import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LARGEST_FILE } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { LONGEST_LINK, linkOf, readLink } from '$src/ui/share/bookLink';
import { LINK_MARK } from '$src/ui/share/linkMark';
import { sampleBook } from '../../book/sample';

test('a small book goes through a link unharmed', async () => {
  const text = writeBook({ ...sampleBook(), title: 'Scharnier ß, 5 µm' });
  const fragment = await linkOf(text);
  expect(fragment!.length).toBeLessThan(3000);
  expect(fragment).toMatch(/^#book=[\w-]+$/);
  expect(await readLink(fragment!)).toEqual({ text });
});

test('a book too large for a link gives none', async () => {
  const noise = Array.from({ length: LONGEST_LINK * 3 }, (_, i) => ((i * 7919) % 9973).toString(36)).join('');
  expect(await linkOf(noise)).toBeNull();
});

test('a small link that unpacks to a huge text is refused', async () => {
  const fragment = await linkOf(' '.repeat(LARGEST_FILE + 1));
  expect(fragment!.length).toBeLessThan(LONGEST_LINK);
  expect(await readLink(fragment!)).toHaveProperty('issue');
});

test('whatever a link holds, it is answered with a text or in words', async () => {
  const whole = (await linkOf(writeBook(sampleBook())))!;
  const cut = fc.nat(whole.length - 1).map((at) => whole.slice(0, at));
  const changed = fc
    .tuple(fc.nat(whole.length - 1), fc.string({ maxLength: 3 }))
    .map(([at, text]) => whole.slice(0, at) + text + whole.slice(at + 1));
  const any = fc.string().map((text) => LINK_MARK + text);
  await fc.assert(
    fc.asyncProperty(fc.oneof(cut, changed, any), async (fragment) => {
      const result = await readLink(fragment);
      if ('issue' in result) expect(result.issue.message).toContain('link');
      else expect(typeof result.text).toBe('string');
    }),
    { numRuns: 200 },
  );
});
