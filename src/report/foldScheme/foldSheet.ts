import type { FoldKind } from '$src/core/pour/record';
import { escaped } from '../drawing/paper';
import { FOLD_KINDS, FRAME, foldScheme } from './foldScheme';

const COLUMNS = 3;
const GAP = 16;
/** Room for the name over each [px]. */
const NAME = 18;

/** The page's own colours, by day and by night; see src/ui/tokens.css. */
const STYLE = `svg{background:#fafaf7;--ink:#171b1f;--ink2:#434a50;--metal:#f3bd74;--sheet:#fafaf7}
@media (prefers-color-scheme:dark){svg{background:#171b1e;--ink:#eceae2;--ink2:#bfc3c3;--metal:#b8671b;--sheet:#171b1e}}
text{font:11px sans-serif;fill:var(--ink)}.name{font-weight:700}.metal{fill:var(--metal)}.gas{fill:var(--sheet)}
.wall,.skin,.flow,.film{fill:none;stroke:var(--ink)}.wall{stroke-width:1.2}.skin{stroke-width:1.6}.flow{stroke:var(--ink2)}
.film{stroke-width:4}.core{fill:none;stroke:var(--metal);stroke-width:1.4}.leader{stroke:var(--ink2);stroke-width:.7}.said{font-size:9px;text-anchor:middle}`;

/** One schematic as the insides of an SVG: its parts, the film as a double line, and what is named. */
export function schemeMarkup(kind: FoldKind): string {
  const { lines, label } = foldScheme(kind);
  const paths = lines.map(
    ({ as, path }) =>
      `<path class="${as}" d="${path}"/>${as === 'film' ? `<path class="core" d="${path}"/>` : ''}`,
  );
  return `${paths.join('')}<path class="leader" d="M${label.x} ${label.y}V64"/><text class="said" x="${label.x}" y="72">${label.text}</text>`;
}

/** All kinds of fold on one sheet, as a file of its own. */
export function foldSheet(): string {
  const [across, down] = [FRAME.width + GAP, FRAME.height + NAME + GAP];
  const rows = Math.ceil(FOLD_KINDS.length / COLUMNS);
  const [width, height] = [COLUMNS * across + GAP, rows * down + GAP];
  const parts = FOLD_KINDS.map((kind, index) => {
    const [x, y] = [GAP + (index % COLUMNS) * across, GAP + Math.floor(index / COLUMNS) * down];
    return `<g transform="translate(${x} ${y})"><text class="name" y="8">${escaped(kind)}</text><g transform="translate(0 ${NAME - 4})">${schemeMarkup(kind)}</g></g>`;
  });
  const said = FOLD_KINDS.map((kind) => `${kind}: ${foldScheme(kind).says}`).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title said"><title id="title">How the skin folds, by kind of fold; schematic, not to scale</title><desc id="said">${escaped(said)}</desc><style>${STYLE}</style>
${parts.join('\n')}
</svg>
`;
}
