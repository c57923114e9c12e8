import { Marked, type Tokens } from 'marked';
import { GUIDE, type Listed } from './guideList';
import { entryName, headingName } from './headingName';

/**
 * The documents as pages. Only what makes the pages at build time may import this: it holds every text, and none of it
 * belongs in what a visitor fetches for the bench.
 */
const TEXTS = import.meta.glob<string>(['/docs/*.md', '/README.md', '/DEVELOPERS.md'], {
  query: '?raw',
  import: 'default',
  eager: true,
});
/** Pictures, and the one other file that a document leads to. Never written into a page: each is fetched when it is wanted. */
const FILES = import.meta.glob<string>(
  ['/docs/pictures/*.jpg', '/docs/figures/*.svg', '/docs/book.schema.json'],
  { query: '?no-inline&url', import: 'default', eager: true },
);
const DRAWINGS = import.meta.glob<string>('/docs/figures/*.svg', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** A page of the guide; its body is markup. */
export interface GuideText {
  readonly name: string;
  readonly title: string;
  readonly body: string;
  /** Headings of the second rank, to be linked to. */
  readonly parts: readonly { readonly name: string; readonly text: string }[];
}

const ALL = GUIDE.flatMap(({ pages }) => pages);

export const GUIDE_NAMES: readonly string[] = ALL.map(({ name }) => name);

/** The way from a page of the guide to the top of the site. */
const TO_TOP = '../../';

/** A page of the guide by its name in the address; null when there is none. */
export function guideText(name: string): GuideText | null {
  const listed = ALL.find((one) => one.name === name);
  return listed ? rendered(listed) : null;
}

function rendered({ name, title, file }: Listed): GuideText {
  const parts: { name: string; text: string }[] = [];
  const isGlossary = name === 'glossary';
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth, text }) {
        const id = headingName(text);
        const words = this.parser.parseInline(tokens);
        if (depth === 2) parts.push({ name: id, text: words.replace(/<[^>]*>/g, '') });
        return `<h${depth} id="${id}">${words}</h${depth}>\n`;
      },
      link({ href, tokens }) {
        const words = this.parser.parseInline(tokens);
        const target = targetOf(href, file);
        return target === null ? words : `<a href="${target}">${words}</a>`;
      },
      image({ href, text }) {
        const picture = FILES[`/${resolved(href, file)}`];
        return picture
          ? `<img src="${fromPage(picture)}" alt="${quoted(text)}" decoding="async"${roomFor(`/${resolved(href, file)}`)}>`
          : quoted(text);
      },
      table(token) {
        return `<div class="scroll-x" role="group" aria-label="Table" tabindex="0"><table>${rowsOf(token, (cell) => this.parser.parseInline(cell.tokens), isGlossary)}</table></div>\n`;
      },
      code: ({ text }) =>
        `<pre role="group" aria-label="To be typed, or read as it is" tabindex="0"><code>${quoted(text)}</code></pre>\n`,
    },
  });
  const body = marked.parse(TEXTS[`/${file}`] ?? '', { async: false });
  return { name, title, body, parts };
}

/** @param isNamed each row can be linked to by its word */
function rowsOf(
  { header, rows }: Tokens.Table,
  shown: (cell: Tokens.TableCell) => string,
  isNamed: boolean,
): string {
  const row = (cells: string) => `<tr>${cells}</tr>`;
  const head = row(header.map((cell) => `<th scope="col">${shown(cell)}</th>`).join(''));
  const nameOf = ({ text }: Tokens.TableCell): string => (isNamed ? ` id="${entryName(text)}"` : '');
  const body = rows.map((cells) =>
    row(
      cells
        .map((cell, at) =>
          at === 0 ? `<th scope="row"${nameOf(cell)}>${shown(cell)}</th>` : `<td>${shown(cell)}</td>`,
        )
        .join(''),
    ),
  );
  return `<thead>${head}</thead><tbody>${body.join('')}</tbody>`;
}

/** Where a link of a document leads from its page; null where the guide has no such page. */
function targetOf(href: string, file: string): string | null {
  if (/^(https?:|mailto:)/.test(href)) return quoted(href);
  const [path = '', heading] = href.split('#');
  const end = heading === undefined ? '' : `#${heading}`;
  if (path === '') return end;
  const there = resolved(path, file);
  const listed = ALL.find((one) => one.file === there);
  if (listed) return `../${listed.name}/${end}`;
  const asFile = FILES[`/${there}`];
  return asFile ? fromPage(asFile) : null;
}

/** A drawing has its room before it comes, so that it can wait until it is scrolled to and nothing moves when it is there. */
function roomFor(path: string): string {
  const box = /viewBox="0 0 (\d+) (\d+)"/.exec(DRAWINGS[path] ?? '');
  return box ? ` width="${box[1]}" height="${box[2]}" loading="lazy"` : '';
}

/** A path as seen from a document, from the top of the project. */
const resolved = (path: string, file: string): string =>
  new URL(path, `https://project/${file}`).pathname.slice(1);

/** The address of a file of the built site, as a page two folders down sees it; in development there is none built. */
function fromPage(address: string): string {
  const built = address.indexOf('_app/');
  return built < 0 ? address : `${TO_TOP}${address.slice(built)}`;
}

const quoted = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
