import { axisValue, gridOf } from './grid';
import { shownNumber, shownQuantity } from './quantities';
import { filledMap } from './refine';
import { isPoured, type Region, regionOf } from './region';
import { FEEDER_RING, FEEDER_RING_WORDS, HATCHED, hatchesOf, SOUND_FILLING } from './regionHatch';
import { regionWords, shortageOf } from './regionWords';
import type { NamedAxis, StudyHead, StudyResults } from './studyFile';

const SIZE = { left: 70, top: 40, side: 28 };

/** Hatches of the regions, each unlike the others; their names begin with `id`, for pages that hold several maps. */
export const hatches = (id: string): string => `<defs>
<pattern id="${id}-folds" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 4H8" stroke="#555" stroke-width="1"/></pattern>
<pattern id="${id}-laps" width="8" height="6" patternUnits="userSpaceOnUse"><path d="M0 3H8" stroke="#555" stroke-width="1"/></pattern>
<pattern id="${id}-misruns" width="10" height="6" patternUnits="userSpaceOnUse"><path d="M0 3H6" stroke="#555" stroke-width="2"/></pattern>
<pattern id="${id}-near" width="7" height="7" patternUnits="userSpaceOnUse"><circle cx="3.5" cy="3.5" r="0.8" fill="#555"/></pattern>
<pattern id="${id}-gas" width="9" height="9" patternUnits="userSpaceOnUse"><circle cx="4.5" cy="4.5" r="2.5" fill="none" stroke="#555" stroke-width="0.9"/></pattern>
<pattern id="${id}-unfilled" width="9" height="9" patternUnits="userSpaceOnUse"><path d="M4.5 2V7M2 4.5H7" stroke="#555" stroke-width="0.9"/></pattern>
<pattern id="${id}-spills" width="5" height="8" patternUnits="userSpaceOnUse"><path d="M2.5 0V8" stroke="#555" stroke-width="1"/></pattern>
</defs>`;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** What a region is filled with, one over the other: hatches named from `id`, or the grey of no pour. */
export function fillsOf(region: Region, id: string): string[] {
  if (!isPoured(region)) return ['#d0d0d0'];
  return hatchesOf(region).map((hatch) => `url(#${id}-${hatch})`);
}

const words = (axis: NamedAxis): string => {
  const { unit } = shownQuantity(axis.quantity);
  return unit === '' ? axis.name : `${axis.name}, ${unit}`;
};

/** One row of the key [px]. */
const KEY_ROW = 22;

/** What the fills mean; only those that are on the map. */
function keyOf(regions: readonly Region[], hasShort: boolean): string[] {
  const grey = [...new Set(regions.filter((region) => !isPoured(region)))];
  const rows: readonly (readonly [string, readonly string[]])[] = [
    ...(['sound', ...HATCHED] as const)
      .filter((region) => regions.includes(region))
      .map((region) => [soundOrElse(region, hasShort), fillsOf(region, 'map')] as const),
    ...(grey[0] ? [[`no pour: ${grey.map(regionWords).join(', ')}`, fillsOf(grey[0], 'map')] as const] : []),
  ];
  const ring = hasShort
    ? [`<g transform="translate(14 8)">${RING}</g><text x="36" y="13">${escaped(FEEDER_RING_WORDS)}</text>`]
    : [];
  const regionRows = rows.map(([meaning, fills]) =>
    [
      ...fills.map((fill) => `<rect width="28" height="16" fill="${fill}"/>`),
      '<rect width="28" height="16" fill="none" stroke="#000"/>',
      `<text x="36" y="13">${escaped(meaning)}</text>`,
    ].join(''),
  );
  return [...regionRows, ...ring];
}

const soundOrElse = (region: Region, hasShort: boolean): string =>
  region === 'sound' && hasShort ? SOUND_FILLING : regionWords(region);

const RING = `<path d="M0 0${FEEDER_RING}" fill="none" stroke="#000"/>`;

/** A map as a picture of its own: each point a square, hatched by its region, with a ring where its feeder is short. Null for a curve. */
export function studySvg(head: StudyHead, results: StudyResults): string | null {
  const [across, up] = head.axes;
  if (!across || !up) return null;
  const grid = gridOf(head);
  const filled = filledMap(grid, new Map([...results].map(([point, result]) => [point, regionOf(result)])));
  if (!filled) return null;
  const short = [...results].flatMap(([point, result]) => (shortageOf(result) === null ? [] : [point]));
  const { left, top, side } = SIZE;
  const foot = top + grid.rows * side;
  const key = keyOf(
    filled.map(({ region }) => region),
    short.length > 0,
  );
  const corner = (point: number) => ({
    x: left + (point % grid.columns) * side,
    y: foot - side * (Math.floor(point / grid.columns) + 1),
  });
  const rings = short.map((point) => {
    const { x, y } = corner(point);
    return `<g transform="translate(${x + side / 2} ${y + side / 2})">${RING}</g>`;
  });
  const [width, height] = [left + grid.columns * side + 20, foot + 60 + KEY_ROW * key.length];
  const squares = filled.flatMap(({ region }, point) => {
    const { x, y } = corner(point);
    return fillsOf(region, 'map').map(
      (fill) =>
        `<rect x="${x}" y="${y}" width="${side}" height="${side}" fill="${fill}"><title>${region}</title></rect>`,
    );
  });
  const acrossTicks = [0, grid.columns - 1].map(
    (k) =>
      `<text x="${left + (k + 0.5) * side}" y="${foot + 18}" text-anchor="middle">${shownNumber(axisValue(across, k), across.quantity)}</text>`,
  );
  const upTicks = [0, grid.rows - 1].map(
    (k) =>
      `<text x="${left - 8}" y="${foot - (k + 0.5) * side + 4}" text-anchor="end">${shownNumber(axisValue(up, k), up.quantity)}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="13">\n${hatches('map')}\n`,
    `<text x="${left}" y="16">${escaped(head.cell)}</text>\n`,
    `<text x="${left - 8}" y="${top - 8}">${escaped(words(up))}</text>\n`,
    `<text x="${left + grid.columns * side}" y="${foot + 38}" text-anchor="end">${escaped(words(across))}</text>\n`,
    ...[...squares, ...rings].map((drawn) => `${drawn}\n`),
    ...[...acrossTicks, ...upTicks].map((tick) => `${tick}\n`),
    ...key.map((row, at) => `<g transform="translate(8 ${foot + 52 + KEY_ROW * at})">${row}</g>\n`),
    `<rect x="${left}" y="${top}" width="${grid.columns * side}" height="${grid.rows * side}" fill="none" stroke="#000"/>\n</svg>\n`,
  ].join('');
}
