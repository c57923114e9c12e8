import type { Point } from '$src/core/section/section';
import { ARC_BOW, ARC_STRAY } from './curves';
import { MOST_POINTS } from './drawing';

/** A rational B-spline. Clamped or not, its domain runs from knot `degree` to knot `controls.length`. */
export interface Nurbs {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly controls: readonly Point[];
  /** One of each control point, positive. */
  readonly weights: readonly number[];
}

/** Higher ones are drawn by no one, and cost their degree squared at each point. */
const HIGHEST_DEGREE = 11;
/** Halvings of one piece; a piece is then a thousandth of its span, and what still strays is no curve. */
const DEEPEST = 10;

/** Whether it is a curve in one piece: as many knots as it takes, none falling, none inside more often than the degree. */
export function isNurbs({ degree, knots, controls, weights }: Nurbs): boolean {
  const count = controls.length;
  return (
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= HIGHEST_DEGREE &&
    count > degree &&
    knots.length === count + degree + 1 &&
    weights.length === count &&
    knots.every((knot, index) => Number.isFinite(knot) && (index === 0 || knot >= knots[index - 1]!)) &&
    knots.slice(1, count).every((knot, index) => knots[index + 1 + degree]! > knot) &&
    weights.every((weight) => weight > 0 && Number.isFinite(weight))
  );
}

/**
 * The point at u in the span of knots from `span` to the next, by de Boor's algorithm in homogeneous coordinates.
 * Source: L. Piegl & W. Tiller, The NURBS Book, chapters 3 to 5; C. de Boor, A Practical Guide to Splines, chapter X.
 */
export function nurbsPoint({ degree, knots, controls, weights }: Nurbs, span: number, u: number): Point {
  const first = span - degree;
  const ws = weights.slice(first, span + 1);
  const xs = ws.map((weight, index) => weight * controls[first + index]!.x);
  const ys = ws.map((weight, index) => weight * controls[first + index]!.y);
  for (let round = 1; round <= degree; round++)
    for (let index = degree; index >= round; index--) {
      const from = knots[first + index]!;
      const share = (u - from) / (knots[span + 1 + index - round]! - from);
      xs[index] = (1 - share) * xs[index - 1]! + share * xs[index]!;
      ys[index] = (1 - share) * ys[index - 1]! + share * ys[index]!;
      ws[index] = (1 - share) * ws[index - 1]! + share * ws[index]!;
    }
  return { x: xs[degree]! / ws[degree]!, y: ys[degree]! / ws[degree]! };
}

/**
 * Points of the curve, both ends counted. Its chords stray no more than those of an arc do, looked for at their quarters:
 * by ARC_STRAY of half its size, and where it bends more sharply by ARC_BOW of the chord, down to a hundredth of the
 * former; by no more than `finest` where that is less. More than MOST_POINTS are not looked for: such a line is not kept.
 */
export function nurbsPoints(nurbs: Nurbs, finest = Infinity): Point[] {
  const { degree, controls } = nurbs;
  const stray = Math.min(finest, ARC_STRAY * halfSize(controls));
  const pieces = Math.ceil(degree / 4);
  const points: Point[] = [];
  for (const { span, from, to } of spansOf(nurbs)) {
    const at = (share: number): Point => nurbsPoint(nurbs, span, from + (to - from) * share);
    if (points.length === 0) points.push(at(0));
    if (points.length > MOST_POINTS) break;
    // Between its ends a piece crosses its chord less often than the degree: three places see any up to the fourth.
    for (let piece = 0; piece < pieces; piece++)
      cutInto(points, at, piece / pieces, (piece + 1) / pieces, stray, DEEPEST);
  }
  return points;
}

/** The stretches of the domain between knots that differ: on each the curve is one polynomial, or ratio of two. */
const spansOf = ({ degree, knots, controls }: Nurbs): { span: number; from: number; to: number }[] =>
  controls
    .map((_, span) => ({ span, from: knots[span]!, to: knots[span + 1]! }))
    .filter(({ span, from, to }) => span >= degree && to > from);

/** Adds the points after the last up to the share `to`, halving where the chord strays. */
function cutInto(
  points: Point[],
  at: (share: number) => Point,
  from: number,
  to: number,
  stray: number,
  left: number,
): void {
  const [start, end] = [points.at(-1)!, at(to)];
  const off = Math.max(
    ...[0.25, 0.5, 0.75].map((quarter) => distance(at(from + (to - from) * quarter), start, end)),
  );
  const allowed = Math.max(
    Math.min(stray, ARC_BOW * Math.hypot(end.x - start.x, end.y - start.y)),
    stray / 100,
  );
  const isOff = off > allowed;
  if (!isOff || left === 0 || points.length > MOST_POINTS) {
    points.push(end);
    return;
  }
  const middle = (from + to) / 2;
  cutInto(points, at, from, middle, stray, left - 1);
  cutInto(points, at, middle, to, stray, left - 1);
}

/** From a point to the stretch between two others. */
function distance(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
  const share = square > 0 ? Math.min(1, Math.max(0, along)) : 0;
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}

/** Half the larger side of the box around the points: of a circle, its radius. */
function halfSize(points: readonly Point[]): number {
  const side = (values: readonly number[]): number =>
    values.reduce((most, value) => Math.max(most, value)) -
    values.reduce((least, value) => Math.min(least, value));
  return Math.max(side(points.map(({ x }) => x)), side(points.map(({ y }) => y))) / 2;
}
