import type { Rest } from './carry';
import { columnsOfPond } from './settle';
import type { Terrain } from './terrain';

/** Metal with one level. */
export interface Pool {
  /** Lab elevation of its surface [m]. */
  readonly level: number;
  /** Where it begins and ends along the axis [m]. */
  readonly from: number;
  readonly to: number;
  /** [m³] */
  readonly volume: number;
}

/** Pools smaller than this share of all metal are round-off, not metal. */
const TRACE = 1e-14;

/** The pools of metal at rest, from the back wall on. */
export function poolsOf(rest: Rest, metal: number): Pool[] {
  const pools: Pool[] = [];
  rest.ponds.forEach((pond, k) => {
    if (!(pond.volume > TRACE * metal)) return;
    const level = rest.levels[k]!;
    const [first, last] = columnsOfPond(rest.terrain, pond);
    const span = wetSpan(rest, first, last, level);
    if (span) pools.push({ level, ...span, volume: pond.volume });
  });
  return pools;
}

function wetSpan(
  rest: Rest,
  first: number,
  last: number,
  level: number,
): { from: number; to: number } | null {
  let from = first;
  let to = last;
  while (from <= to && !(rest.inColumn[from]! > 0)) from++;
  while (to >= from && !(rest.inColumn[to]! > 0)) to--;
  if (from > to) return null;
  return { from: wetEnd(rest.terrain, from, level, 'left'), to: wetEnd(rest.terrain, to, level, 'right') };
}

/** Where the level meets the floor of a column, on the asked side. */
function wetEnd(
  { columns, sin, cos }: Terrain,
  index: number,
  level: number,
  side: 'left' | 'right',
): number {
  const column = columns[index]!;
  const left = column.left * sin + column.floorLeft * cos;
  const right = column.right * sin + column.floorRight * cos;
  const outer = side === 'left' ? left : right;
  if (outer < level) return side === 'left' ? column.left : column.right;
  const place = column.left + ((column.right - column.left) * (level - left)) / (right - left);
  return Number.isFinite(place) ? Math.min(Math.max(place, column.left), column.right) : column.left;
}
