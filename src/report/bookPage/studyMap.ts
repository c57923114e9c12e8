import type { PageUnits } from '$src/core/units';
import { escaped, short } from '../drawing/paper';
import { axisIndex, type Grid } from '../study/grid';
import { type MapAnswer, regionCounts, shortCountWords, shortPoints } from '../study/mapAnswer';
import { shownQuantity, shownValue } from '../study/quantities';
import { isPoured, type Region } from '../study/region';
import { FEEDER_RING, FEEDER_RING_WORDS, HATCHED, SOUND_FILLING } from '../study/regionHatch';
import { regionWords } from '../study/regionWords';
import type { NamedAxis } from '../study/studyFile';
import { fillsOf, hatches } from '../study/studySvg';

/** A map as it is drawn. */
export interface DrawnMap {
  readonly axes: readonly NamedAxis[];
  readonly answer: MapAnswer;
  /** Free in the page. */
  readonly id: string;
}

/** The picture of any map, whatever its points [px]: its hatches keep their scale. */
const SIZE = { width: 600, height: 440 };

/** A map of two settings as a picture with its hatches; the words stand beside it, so that they keep their size on a phone. */
export function studyMap({ axes, answer, id }: DrawnMap, units: PageUnits): string {
  const [across, up] = axes as readonly [NamedAxis, NamedAxis];
  const { width, height } = SIZE;
  const ends = (axis: NamedAxis): string[] =>
    [axis.from, axis.to].map((value) => `<span>${escaped(shownValue(value, axis.quantity, units))}</span>`);
  const [left, right] = ends(across);
  const [low, high] = ends(up);
  return `<figure class="map"><p class="chart-title">${escaped(axisName(up, units))}</p>
<div class="map-field"><div class="map-up">${high}${low}</div><svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(mapWords(axes, answer))}">${hatches(id)}
${stretches(answer, id)}<rect class="frame" width="${width}" height="${height}"/>${feederRings(answer)}${setPoint(axes, answer)}</svg>
<div class="map-across">${left}<span>${escaped(axisName(across, units))}</span>${right}</div></div>
${mapKey(axes, answer, id)}</figure>`;
}

const axisName = ({ name, quantity }: NamedAxis, units: PageUnits): string => {
  const { unit } = shownQuantity(quantity, units);
  return unit === '' || unit === '°' ? name : `${name}, ${unit}`;
};

const mapWords = ([across, up]: readonly NamedAxis[], answer: MapAnswer): string =>
  `Map of ${up!.name} against ${across!.name}. ${regionCounts(answer)
    .map(([region, count]) => `${regionWords(region)}: ${count} ${count === 1 ? 'point' : 'points'}`)
    .join('; ')}.${shortCountWords(answer)}`;

/** What one point takes of the picture [px]. */
const sidesOf = ({ columns, rows }: Grid) => ({ x: SIZE.width / columns, y: SIZE.height / rows });

/** Points beside each other in one region are one rectangle: a page is sent about. */
function stretches({ grid, regions }: MapAnswer, id: string): string {
  const drawn: string[] = [];
  const side = sidesOf(grid);
  for (let row = 0; row < grid.rows; row++) {
    let from = 0;
    for (let column = 1; column <= grid.columns; column++) {
      const region = regions[from + row * grid.columns]!;
      if (column < grid.columns && regions[column + row * grid.columns] === region) continue;
      const [x, y] = [from * side.x, (grid.rows - 1 - row) * side.y];
      const box = `x="${short(x)}" y="${short(y)}" width="${short((column - from) * side.x)}" height="${short(side.y)}"`;
      drawn.push(...fillsOf(region, id).map((fill) => `<rect ${box} ${look(fill)}/>`));
      from = column;
    }
  }
  return drawn.join('');
}

const look = (fill: string): string => (fill.startsWith('url') ? `fill="${fill}"` : 'class="no-pour"');

/** A small ring at each computed pour whose feeder is short. */
function feederRings(answer: MapAnswer): string {
  const side = sidesOf(answer.grid);
  const { columns, rows } = answer.grid;
  const at = (point: number): string =>
    `M${short(((point % columns) + 0.5) * side.x)} ${short((rows - 0.5 - Math.floor(point / columns)) * side.y)}${FEEDER_RING}`;
  const points = shortPoints(answer);
  return points.length === 0 ? '' : `<path class="feeder" d="${points.map(at).join('')}"/>`;
}

/** A ring where the pour itself is set, when that lies in the map. */
function setPoint([across, up]: readonly NamedAxis[], { grid }: MapAnswer): string {
  const spot = setSpot(across!, up!, grid);
  return spot ? `<circle class="set" cx="${short(spot.x)}" cy="${short(spot.y)}" r="7"/>` : '';
}

function setSpot(across: NamedAxis, up: NamedAxis, grid: Grid): { x: number; y: number } | null {
  if (across.setPoint === null || up.setPoint === null) return null;
  const [column, row] = [axisIndex(across, across.setPoint), axisIndex(up, up.setPoint)];
  const isInside = (index: number, { points }: NamedAxis) => index > -0.5 && index < points - 0.5;
  if (!isInside(column, across) || !isInside(row, up)) return null;
  const side = sidesOf(grid);
  return { x: (column + 0.5) * side.x, y: (grid.rows - 0.5 - row) * side.y };
}

/** Only what is on the map. */
function mapKey([across, up]: readonly NamedAxis[], answer: MapAnswer, id: string): string {
  const { grid, regions } = answer;
  const box = (attribute: string): string => `<rect ${attribute} width="28" height="16"/>`;
  const sample = (region: Region): string =>
    fillsOf(region, id)
      .map((fill) => box(look(fill)))
      .join('') + box('class="frame"');
  const grey = [...new Set(regions.filter((region) => !isPoured(region)))];
  const shown = (['sound', ...HATCHED] as const).filter((region) => regions.includes(region));
  const hasShort = shortPoints(answer).length > 0;
  const words = (region: Region): string =>
    region === 'sound' && hasShort ? SOUND_FILLING : regionWords(region);
  const items = shown.map((region) => keyItem(words(region), sample(region)));
  if (grey[0]) items.push(keyItem(`no pour to judge: ${grey.map(regionWords).join(', ')}`, sample(grey[0])));
  if (hasShort) items.push(keyItem(FEEDER_RING_WORDS, `<path class="feeder" d="M14 8${FEEDER_RING}"/>`));
  if (setSpot(across!, up!, grid))
    items.push(keyItem('where the pour is set', '<circle class="set" cx="14" cy="8" r="6"/>'));
  return `<ul class="key">${items.join('')}</ul>`;
}

const keyItem = (words: string, sample: string): string =>
  `<li><svg viewBox="0 0 28 16" aria-hidden="true">${sample}</svg>${escaped(words)}</li>`;
