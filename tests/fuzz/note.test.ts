import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '$src/ui/cells/markdown';

/** All that the markup of a note may hold: these tags, and of attributes where a link leads and how a table stands. */
const KNOWN_TAG =
  /<\/?(?:p|em|strong|del|h[1-6]|ul|ol(?: start="\d+")?|li|code(?: class="[^"<>]*")?|pre|blockquote|br|hr|table|thead|tbody|tr|t[hd](?: align="(?:left|right|center)")?|a(?: href="(?:https?:|mailto:|#)[^"<>]*")?)>/gi;

const leftOver = (html: string): string => html.replace(KNOWN_TAG, '').replace(/[^<]*(?=<|$)/, '');

const ATTACKS = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '<img src=x onerror=alert(1) ',
  '&#60;img src=x onerror=alert(1)&#62;',
  '&lt;img src=x onerror=alert(1)&gt;',
  'text <b onclick="alert(1)">here</b>',
  '[press](javascript:alert(1))',
  '[press](JaVaScRiPt:alert(1))',
  '[press](&#106;avascript:alert(1))',
  '[press](java\tscript:alert(1))',
  '[press](data:text/html;base64,PHNjcmlwdD4=)',
  '[press](vbscript:x)',
  '[press](//elsewhere.example)',
  '![picture](javascript:alert(1))',
  '![<img src=x onerror=alert(1)>](https://a.example)',
  '<javascript:alert(1)>',
  '[a]: javascript:alert(1)\n\n[a]',
  '[a](x "\\" onmouseover=\\"alert(1)")',
  '[a](https://a.example/"onmouseover="alert(1))',
  '```"><img src=x onerror=alert(1)>\ncode\n```',
];

describe('a note from anywhere', () => {
  it.each(ATTACKS)('runs nothing: %s', (text) => {
    expect(leftOver(renderMarkdown(text))).toBe('');
  });

  it('runs nothing, however the pieces are put together', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        ...ATTACKS,
        '"',
        "'",
        '`',
        '<',
        '>',
        '&',
        '*',
        '_',
        '[',
        '](',
        ')',
        '|',
        '\n',
        '\n\n',
        '    ',
        '- ',
        '# ',
        '&#',
        ';',
        '\\',
      ),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        expect(leftOver(renderMarkdown(pieces.join('')))).toBe('');
      }),
      { seed: 20261130, numRuns: 3000 },
    );
  });

  it('finds a tag that is not known', () => {
    expect(leftOver('<p>a</p><img src="x">')).not.toBe('');
    expect(leftOver('<p>a <a href="javascript:x">b</a></p>')).not.toBe('');
    expect(leftOver('<p>a<img src=x </p>')).not.toBe('');
  });
});

describe('what a note may hold', () => {
  it.each([
    ['**bold**, *leaning*', '<p><strong>bold</strong>, <em>leaning</em></p>'],
    ['- one\n- two', '<ul>\n<li>one</li>\n<li>two</li>\n</ul>'],
    ['"so" it\'s 12 mm -- or 3 kg', '<p>“so” it’s 12\u00a0mm – or 3\u00a0kg</p>'],
    ['a < b & c, 20 &deg;', '<p>a &lt; b &amp; c, 20 &deg;</p>'],
    [
      '[cell](#pour-1), [page](https://a.example/?a=1&b=2)',
      '<p><a href="#pour-1">cell</a>, <a href="https://a.example/?a=1&amp;b=2">page</a></p>',
    ],
    ['- [x] coat dry', '<ul>\n<li>☒ coat dry</li>\n</ul>'],
  ])('%s', (text, html) => {
    expect(renderMarkdown(text).trim()).toBe(html);
  });
});
