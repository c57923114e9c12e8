import { escaped } from '../drawing/paper';
import { REPLAY_SCRIPT } from './replayScript';

/** A part of the page: a cell of the book, its body already markup. */
export interface PagePart {
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
}

/** A whole book as one page that opens without the program and without a network, and replays its pours. */
export function bookPage({
  title,
  casting,
  parts,
  bookText,
  bookFileName,
  scriptHash,
}: BookPageParts): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-${scriptHash}'`;
  const sections = parts.map(
    ({ name, kind, body }) =>
      `<section><p class="kind">${escaped(kind)}</p><h2>${escaped(name)}</h2>\n${body}\n</section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<header><h1>${escaped(title)}</h1><p>${escaped(casting)}</p></header>
${sections.join('\n')}
<footer><p>Computed by a model: good for comparing pours, no promise until matched with castings of your own. Follow local codes, and ask a competent person before anybody pours.</p>
<p><a download="${escaped(bookFileName)}" href="data:application/json;charset=utf-8,${encodeURIComponent(bookText)}">Take the book file out of this page</a>, to change it in Quietpour.</p></footer>
<script>${REPLAY_SCRIPT}</script>
</body>
</html>
`;
}

const STYLE = `
:root{color-scheme:light dark;--board:#e4e6e3;--sheet:#fafaf7;--ink:#171b1f;--ink2:#434a50;--hair:#c6cac6;--steel:#838c92;--metal:#f3bd74;--skin:#9a4300}
@media (prefers-color-scheme:dark){:root{--board:#17191b;--sheet:#1f2225;--ink:#eceee9;--ink2:#b4bab9;--hair:#3c4144;--steel:#8a9297;--metal:#e89c3f;--skin:#ffd9a0}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:1080px;padding:24px 20px 60px;background:var(--board);color:var(--ink);font:15px/1.5 "Avenir Next Condensed","Roboto Condensed","DejaVu Sans Condensed",system-ui,sans-serif;font-variant-numeric:tabular-nums}
header,section,footer{background:var(--sheet);border:1px solid var(--hair);border-top:2px solid var(--ink);padding:18px 22px;margin-bottom:20px}
h1{font-size:27px;line-height:1.15;margin:0}
h2{font-size:19px;line-height:1.2;margin:0 0 12px}
p{margin:0 0 8px;max-width:80ch}
.kind,header p,caption,footer{color:var(--ink2)}
.kind{margin:0}
.words{font:17px/1.5 Charter,Georgia,"DejaVu Serif",serif}
.verdict{font-size:17px}
figure{margin:14px 0}
svg{display:block;width:100%;max-height:70vh}
.steel{stroke:var(--ink);stroke-width:1.2}
.hatch{stroke:var(--steel);stroke-width:.8}
.metal{fill:var(--metal)}
.skin{fill:none;stroke:var(--skin);stroke-width:2}
.front{fill:none;stroke:var(--ink);stroke-width:2}
.hand{display:grid;grid-template-columns:auto minmax(0,1fr);gap:8px 14px;align-items:center;margin-top:10px}
.hand button{font:inherit;min-width:72px;min-height:44px;color:inherit;background:none;border:1px solid var(--ink);cursor:pointer}
.hand output{grid-column:2;font-weight:600}
:focus-visible{outline:2px solid #1f5fa8;outline-offset:2px}
table{border-collapse:collapse;width:100%;margin:14px 0 4px}
caption{text-align:left}
th,td{text-align:left;vertical-align:top;padding:5px 14px 5px 0;border-bottom:1px solid var(--hair)}
a{color:inherit}
@media (max-width:699px){body{padding:0 0 40px}header,section,footer{padding:14px 16px;margin-bottom:14px;border-left:0;border-right:0}table{display:block;overflow-x:auto}}
@media print{body{background:none;padding:0}section{break-inside:avoid-page;border:0;border-top:1px solid #000}.hand{display:none}}
`;
