import type { Issue } from '$src/core/issue';
import { millimetres } from '$src/core/section/millimetres';
import type { Point } from '$src/core/section/section';
import type { DrawnLine } from './drawing';
import { fewestPoints } from './fewestPoints';
import { FINE_CUT, LARGEST_STRAY, MOST_CORNERS, PARTS_OF_METRE } from './tolerance';

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
/** What a line gives as floor or roof. */
export interface WallPoints {
  /** As few as the line needs. */
  readonly points: readonly Point[];
  /** All that the line has. */
  readonly drawn: readonly Point[];
  /** Most that the few stray from the line [m]. */
  readonly stray: number;
}
export type WallLine = WallPoints | { readonly issues: readonly Issue[] };

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
  return fewOf(upright);
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
  const within = (end: number, near: number) =>
    points.map((point, index) => ({ ...point, index })).filter(({ x }) => Math.abs(x - end) <= near);
  /** The corner at an end wall that belongs to this side; of a wall that is not quite upright, within its slip. */
  const corner = (end: number): number => {
    const upright = within(end, ON_LINE);
    const there = upright.length > 1 ? upright : within(end, SLIP);
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

/** What is left of the largest stray once a curve is cut and places are rounded [m]. */
const OWN_STRAY = LARGEST_STRAY - FINE_CUT - Math.SQRT1_2 / PARTS_OF_METRE;
/** Points that stray less than this from the line between their neighbours lie on it [m]. */
const ON_LINE = 1e-7;
/** What is drawn straight over this length stays where it is [m]: a flat keeps its height, a step its place. Our choice, no source. */
const LONG = 0.01 - ON_LINE;

/** The line with no more points than it needs, and no two alike; one that needs very many strays further. */
function fewOf(points: readonly Point[]): WallPoints {
  const drawn = points.filter(
    ({ x, y }, index) => index === 0 || Math.hypot(x - points[index - 1]!.x, y - points[index - 1]!.y) > 1e-6,
  );
  const cornered = fewestPoints(drawn, ON_LINE);
  let doubled = 1;
  let kept = betweenStraights(cornered, doubled);
  while (kept.length > MOST_CORNERS) {
    doubled *= 2;
    kept = betweenStraights(cornered, doubled);
  }
  return { points: kept, drawn, stray: doubled * LARGEST_STRAY };
}

/** The line with its long straight pieces as they are, and the fewest points between them. */
function betweenStraights(points: readonly Point[], doubled: number): readonly Point[] {
  const kept: Point[] = [points[0]!];
  let from = 0;
  for (let at = 1; at <= points.length; at++) {
    const isEnd = at === points.length;
    if (!isEnd && lengthOf(points, at) < LONG * doubled) continue;
    kept.push(...fewestPoints(points.slice(from, at), doubled * OWN_STRAY).slice(1));
    if (!isEnd) kept.push(points[at]!);
    from = at;
  }
  return kept;
}

const lengthOf = (points: readonly Point[], at: number): number =>
  Math.hypot(points[at]!.x - points[at - 1]!.x, points[at]!.y - points[at - 1]!.y);
