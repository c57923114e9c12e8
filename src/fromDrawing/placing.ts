import type { Issue } from '$src/core/issue';
import { millimetres } from '$src/core/section/millimetres';
import type { Point } from '$src/core/section/section';
import type { DrawnLine } from './drawing';

/** How a drawing is laid into the die frame. */
export interface Placing {
  /** Metres of one unit of the drawing. */
  readonly metresPerUnit: number;
  /** Quarter turns anticlockwise. */
  readonly quarterTurns: 0 | 1 | 2 | 3;
  /** Left and right changed, after turning: the die end is on the left of the drawing. */
  readonly isMirrored: boolean;
}

/** Smaller steps back are the drawing's own inaccuracy, and are taken as upright [m]. */
const SLIP = 5e-5;
/** Points nearer to the line between their neighbours than this are left out [m]. */
const FINE = 5e-5;
/** More points than this are thinned further. */
const MOST_POINTS = 120;

/** A point of the drawing laid into the die frame, its origin still that of the drawing [m]. */
export function placed({ metresPerUnit, quarterTurns, isMirrored }: Placing): (point: Point) => Point {
  const [c, s] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ][quarterTurns]! as [number, number];
  return ({ x, y }) => {
    const along = (x * c - y * s) * metresPerUnit;
    return { x: isMirrored ? -along : along, y: (x * s + y * c) * metresPerUnit };
  };
}

export type Wall = 'floor' | 'roof';
export type WallLine = { readonly points: readonly Point[] } | { readonly issues: readonly Issue[] };

/** The floor or roof that a line gives: of a closed line its lower or upper side; from the back wall to the die end. */
export function wallOf(line: DrawnLine, wall: Wall, placing: Placing): WallLine {
  const points = line.points.map(placed(placing));
  const side = line.isClosed ? sideOf(points, wall) : inOrder(points);
  const back = side.findIndex((point, index) => index > 0 && point.x < side[index - 1]!.x - SLIP);
  if (back > 0) return { issues: [runsBack(line, wall, side[back]!)] };
  const upright = climbing(side);
  const length = upright.at(-1)!.x - upright[0]!.x;
  if (!(length > SLIP)) {
    const message = `“${line.name}” has no length along the die.`;
    return {
      issues: [{ path: wall, message, remedy: `Choose another line as the ${wall}, or turn the drawing.` }],
    };
  }
  return { points: thinned(upright) };
}

/** The line with x that never falls: smaller slips back are taken as upright. */
function climbing(points: readonly Point[]): Point[] {
  let most = Number.NEGATIVE_INFINITY;
  return points.map(({ x, y }) => {
    most = Math.max(most, x);
    return { x: most, y };
  });
}

function runsBack({ name }: DrawnLine, wall: Wall, at: Point): Issue {
  const message = `“${name}” runs back on itself ${millimetres(at.x)} mm along, ${millimetres(at.y)} mm up.`;
  const remedy = `A ${wall} goes from the back wall to the die end without turning back: draw it without the overhang, or choose another line.`;
  return { path: wall, message, remedy, at };
}

const inOrder = (points: readonly Point[]): readonly Point[] =>
  points.at(-1)!.x < points[0]!.x ? points.toReversed() : points;

/** Lower (floor) or upper (roof) side of a closed outline, without the walls at its two ends. */
function sideOf(outline: readonly Point[], wall: Wall): readonly Point[] {
  const [first, last] = [outline[0]!, outline.at(-1)!];
  const points = Math.hypot(first.x - last.x, first.y - last.y) < SLIP ? outline.slice(0, -1) : outline;
  const lowest = Math.min(...points.map(({ x }) => x));
  const highest = Math.max(...points.map(({ x }) => x));
  const outward = wall === 'floor' ? -1 : 1;
  /** The corner at an end wall that belongs to this side. */
  const corner = (end: number): number => {
    const there = points
      .map((point, index) => ({ ...point, index }))
      .filter(({ x }) => Math.abs(x - end) <= SLIP);
    return there.reduce((best, point) => (outward * point.y > outward * best.y ? point : best)).index;
  };
  const [from, to] = [corner(lowest), corner(highest)];
  const onward = chain(points, from, to);
  const backward = chain(points, to, from).toReversed();
  const mean = (side: readonly Point[]): number => heightOf(side);
  return outward * mean(onward) > outward * mean(backward) ? onward : backward;
}

function chain(points: readonly Point[], from: number, to: number): Point[] {
  const count = ((to - from + points.length) % points.length) + 1;
  return Array.from({ length: count }, (_, step) => points[(from + step) % points.length]!);
}

/** Mean height of a chain over its extent along the die. */
function heightOf(points: readonly Point[]): number {
  let area = 0;
  for (let index = 1; index < points.length; index++) {
    const [a, b] = [points[index - 1]!, points[index]!];
    area += ((b.x - a.x) * (a.y + b.y)) / 2;
  }
  return area / (points.at(-1)!.x - points[0]!.x);
}

/** The line with no more points than it needs: none that lies on the line between its neighbours, and no two alike. */
function thinned(points: readonly Point[]): readonly Point[] {
  const apart = points.filter(
    ({ x, y }, index) => index === 0 || Math.hypot(x - points[index - 1]!.x, y - points[index - 1]!.y) > 1e-6,
  );
  let fine = FINE;
  let kept = simplified(apart, fine);
  while (kept.length > MOST_POINTS) {
    fine *= 2;
    kept = simplified(apart, fine);
  }
  return kept;
}

/**
 * Leaves out what strays less than `fine` from the line between what stays.
 * Source: D. H. Douglas & T. K. Peucker, Cartographica 10 (1973) 112.
 */
function simplified(points: readonly Point[], fine: number): readonly Point[] {
  if (points.length < 3) return points;
  const [a, b] = [points[0]!, points.at(-1)!];
  let [worst, at] = [0, 0];
  for (let index = 1; index < points.length - 1; index++) {
    const stray = strayOf(points[index]!, a, b);
    if (stray > worst) [worst, at] = [stray, index];
  }
  if (worst <= fine) return [a, b];
  return [...simplified(points.slice(0, at + 1), fine).slice(0, -1), ...simplified(points.slice(at), fine)];
}

function strayOf(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(p.x - a.x, p.y - a.y);
  return Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / length;
}
