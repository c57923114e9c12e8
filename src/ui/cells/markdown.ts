import { Marked } from 'marked';
import { smartypantsu } from 'smartypants';

/** A figure and its unit stay on one line. */
const UNIT_AFTER_NUMBER = /(\d) ((?:mm|cm³|kg|g|s|m\/s|%|°C|°\/s)(?![\w°/]))/g;
/** Where a link of a note may lead: another page, a letter, a cell of this book. */
const KNOWN_TARGET = /^(https?:|mailto:|#)/i;

const MARKS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => MARKS[mark]!);
/** An entity such as &deg; stays one: what it stands for is text again and no markup. */
const MARK_OF_TEXT = /&(?!(?:#\d{1,7}|#x[\da-f]{1,6}|\w{2,31});)|[<>"']/gi;
/** Curly quotes, and dashes for two and three hyphens; then escaped. */
const proseOf = (text: string): string =>
  smartypantsu(text, '2').replace(MARK_OF_TEXT, (mark) => MARKS[mark]!);

/** Raw HTML stays text, a link that could hold a script is no link, and a picture is a link to it. */
const renderer = new Marked({
  renderer: {
    html: ({ text, block }) => (block ? `<p>${escaped(text)}</p>\n` : escaped(text)),
    link({ href, tokens }) {
      return linked(href, this.parser.parseInline(tokens));
    },
    image: ({ href, text }) => linked(href, escaped(text)),
    text(token) {
      return 'tokens' in token && token.tokens ? this.parser.parseInline(token.tokens) : proseOf(token.text);
    },
    checkbox: ({ checked }) => (checked ? '☒ ' : '☐ '),
  },
});

const linked = (href: string, words: string): string =>
  KNOWN_TARGET.test(href) ? `<a href="${escaped(href)}">${words}</a>` : words;

export function renderMarkdown(text: string): string {
  return renderer.parse(text, { async: false }).replace(UNIT_AFTER_NUMBER, '$1\u00a0$2');
}
