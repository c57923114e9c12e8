import { escaped } from '../drawing/paper';
import { bookLinkOf } from './bookInPage';
import { BOOK_PAGE_STYLE } from './bookPageStyle';
import { REPLAY_SCRIPT } from './replayScript';

/** A part of the page: a cell of the book, its body already markup. */
export interface PagePart {
  /** What a link within the page names it by. */
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly body: string;
}

export interface BookPageParts {
  readonly title: string;
  readonly casting: string;
  readonly parts: readonly PagePart[];
  /** Text of the book file, to be taken out of the page again. */
  readonly bookText: string;
  readonly bookFileName: string;
  /** SHA-256 of `REPLAY_SCRIPT`, base64: the only script the page lets run. */
  readonly scriptHash: string;
  /** Style of what the parts bring along, e.g. of a shop card; it comes after the page's own. */
  readonly partStyle?: string;
}

/** A whole book as one page that opens without the program and without a network, and replays its pours. */
export function bookPage({
  title,
  casting,
  parts,
  bookText,
  bookFileName,
  scriptHash,
  partStyle = '',
}: BookPageParts): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-${scriptHash}'`;
  const sections = parts.map(
    ({ id, name, kind, body }) =>
      `<section id="${id}"><p class="kind">${escaped(kind)}</p><h2>${escaped(name)}</h2>\n${body}\n</section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${BOOK_PAGE_STYLE}${partStyle}</style>
</head>
<body>
<header><h1>${escaped(title)}</h1><p>${escaped(casting)}</p></header>
${sections.join('\n')}
<footer><p>Computed by a model: good for comparing pours, no promise until matched with castings of your own. Follow local codes, and ask a competent person before anybody pours.</p>
<p><a download="${escaped(bookFileName)}" ${bookLinkOf(bookText)}>Take the book file out of this page</a>, to change it in Quietpour.</p></footer>
<script>${REPLAY_SCRIPT}</script>
</body>
</html>
`;
}
