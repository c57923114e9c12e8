import { axisValue, gridOf } from './grid';
import { shownNumber, shownQuantity } from './quantities';
import { filledMap } from './refine';
import { foldsFilm, isCold, isPoured, missesDie, type Region, regionOf } from './region';
import type { NamedAxis, StudyHead, StudyResults } from './studyFile';

const SIZE = { left: 70, top: 40, side: 28 };

/** Hatches of the regions; their names begin with `id`, for pages that hold several maps. */
export const hatches = (id: string): string => `<defs>
<pattern id="${id}-folds" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 4H8" stroke="#555" stroke-width="1"/></pattern>
<pattern id="${id}-laps" width="8" height="6" patternUnits="userSpaceOnUse"><path d="M0 3H8" stroke="#555" stroke-width="1"/></pattern>
<pattern id="${id}-near" width="7" height="7" patternUnits="userSpaceOnUse"><circle cx="3.5" cy="3.5" r="0.8" fill="#555"/></pattern>
</defs>`;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** What a region is filled with, one over the other: hatches named from `id`, or the grey of no pour. */
export function fillsOf(region: Region, id: string): string[] {
  if (!isPoured(region)) return ['#d0d0d0'];
  return [
    ...(foldsFilm(region) ? [`url(#${id}-folds)`] : []),
    ...(isCold(region) ? [`url(#${id}-laps)`] : []),
    ...(region === 'near the limit' || missesDie(region) ? [`url(#${id}-near)`] : []),
  ];
}

const words = (axis: NamedAxis): string => {
  const { unit } = shownQuantity(axis.quantity);
  return unit === '' ? axis.name : `${axis.name}, ${unit}`;
};

/** A map as a picture of its own: each point a square, hatched by its region. Null for a curve. */
export function studySvg(head: StudyHead, results: StudyResults): string | null {
  const [across, up] = head.axes;
  if (!across || !up) return null;
  const grid = gridOf(head);
  const filled = filledMap(grid, new Map([...results].map(([point, result]) => [point, regionOf(result)])));
  if (!filled) return null;
  const { left, top, side } = SIZE;
  const [width, height] = [left + grid.columns * side + 20, top + grid.rows * side + 60];
  const foot = top + grid.rows * side;
  const squares = filled.flatMap(({ region }, point) => {
    const x = left + (point % grid.columns) * side;
    const y = foot - side * (Math.floor(point / grid.columns) + 1);
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
    `<text x="${left}" y="16">${escaped(`${head.cell}: steep hatch folds film, level lines lap, dots near a limit or not filled, blank sound, grey no pour`)}</text>\n`,
    `<text x="${left - 8}" y="${top - 8}">${escaped(words(up))}</text>\n`,
    `<text x="${left + grid.columns * side}" y="${foot + 38}" text-anchor="end">${escaped(words(across))}</text>\n`,
    ...squares.map((square) => `${square}\n`),
    ...[...acrossTicks, ...upTicks].map((tick) => `${tick}\n`),
    `<rect x="${left}" y="${top}" width="${grid.columns * side}" height="${grid.rows * side}" fill="none" stroke="#000"/>\n</svg>\n`,
  ].join('');
}
