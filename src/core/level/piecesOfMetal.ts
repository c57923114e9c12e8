import type { Section } from '$src/core/section/section';
import { widthAt } from '$src/core/section/widthAt';
import { levelPath } from './levelPath';
import { metalPolygons } from './metalPolygons';

/** Adds a piece of metal: its volume [m³] and its centre from the pivot, on the body [m]. */
export type AddPiece = (volume: number, x: number, y: number) => void;

/** The metal standing level at some inclination, in pieces; what a very slow tilt would carry. */
export type PiecesOfMetal = (inclination: number, add: AddPiece) => void;

/** Slices of a pool between its ends: fine enough for a centre of gravity to a millimetre. */
const SLICES = 40;

/** Pieces of the level fill over the whole tilt; the section must have passed `checkSection`. */
export function piecesOfMetal(section: Section, volume: number, start: number, end: number): PiecesOfMetal {
  const path = levelPath(section, volume, start, end, null);
  const known = path.inclination.length;
  const pieces: (readonly [number, number, number])[][] = [];
  const at = (index: number) => (pieces[index] ??= piecesAt(section, path, index));
  return (inclination, add) => {
    let low = 0;
    let high = known - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (path.inclination[middle]! >= inclination) low = middle;
      else high = middle;
    }
    const span = path.inclination[low]! - path.inclination[high]!;
    const share = span > 0 ? Math.min(Math.max((path.inclination[low]! - inclination) / span, 0), 1) : 0;
    for (const [size, x, y] of at(low)) add(size * (1 - share), x, y);
    for (const [size, x, y] of at(high)) add(size * share, x, y);
  };
}

function piecesAt(
  section: Section,
  path: ReturnType<typeof levelPath>,
  index: number,
): (readonly [number, number, number])[] {
  const pools = path.pools[index]!;
  const outlines = metalPolygons(section, pools, path.inclination[index]!);
  const raw = outlines.flatMap((outline) => {
    const places = outline.map(({ x }) => x);
    const [from, to] = [Math.min(...places), Math.max(...places)];
    return Array.from({ length: SLICES }, (_, k) => {
      const x = from + ((to - from) * (k + 0.5)) / SLICES;
      const [low, high] = crossings(outline, x);
      const size = (((high - low) * (to - from)) / SLICES) * widthAt(section, x, 'right');
      return [size, x - section.pivot.x, (low + high) / 2 - section.pivot.y] as const;
    });
  });
  const sum = raw.reduce((total, [size]) => total + size, 0);
  const whole = pools.reduce((total, pool) => total + pool.volume, 0);
  return raw.map(([size, x, y]) => [sum > 0 ? (size * whole) / sum : 0, x, y] as const);
}

/** Lowest and highest y of an outline at x. */
function crossings(outline: readonly { x: number; y: number }[], x: number): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    if (a.x > x === b.x > x) return;
    const y = a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  });
  return low <= high ? [low, high] : [0, 0];
}
