import type { Point } from '$src/core/section/section';
import type { Nurbs } from './nurbs';
import { solvedAround, solvedInLine, type Tridiagonal } from './tridiagonal';

/** The points a curve goes through, and how it leaves the first and reaches the last, where the file says so. */
export interface FitPoints {
  readonly points: readonly Point[];
  readonly startTangent: Point | null;
  readonly endTangent: Point | null;
  readonly isClosed: boolean;
}

/**
 * The cubic with continuous curvature through the points, its parameter the length of the chords: natural where no
 * tangent is given, of one piece where closed. A drawing with points alone leaves the curve between them to the reader.
 * Source: C. de Boor, A Practical Guide to Splines, chapter IV (from memory). Null when there are fewer than two points.
 */
export function throughPoints({ points, startTangent, endTangent, isClosed }: FitPoints): Nurbs | null {
  const apart = points.filter(
    ({ x, y }, index) => index === 0 || x !== points[index - 1]!.x || y !== points[index - 1]!.y,
  );
  const isRound = isClosed && ringOf(apart).length > 2;
  const through = isRound ? [...ringOf(apart), apart[0]!] : apart;
  if (through.length < 2) return null;
  const lengths = through
    .slice(1)
    .map(({ x, y }, index) => Math.hypot(x - through[index]!.x, y - through[index]!.y));
  const slopes = (axis: 'x' | 'y'): number[] => {
    const values = through.map((point) => point[axis]);
    if (isRound) return roundSlopes(values, lengths);
    return openSlopes(values, lengths, unit(startTangent)?.[axis], unit(endTangent)?.[axis]);
  };
  return cubicOf(through, lengths, slopes('x'), slopes('y'));
}

/** Without the last point where it repeats the first. */
const ringOf = (points: readonly Point[]): readonly Point[] => {
  const [first, last] = [points[0], points.at(-1)];
  return points.length > 1 && first!.x === last!.x && first!.y === last!.y ? points.slice(0, -1) : points;
};

/** The direction alone: along a chord's length a curve goes about as fast as its chord. */
function unit(tangent: Point | null): Point | null {
  const length = tangent ? Math.hypot(tangent.x, tangent.y) : 0;
  return tangent && length > 0 ? { x: tangent.x / length, y: tangent.y / length } : null;
}

/** Equal curvature on both sides of the point between two chords, as an equation for the slopes there. */
const smooth = (values: readonly [number, number, number], before: number, behind: number) => ({
  below: behind,
  middle: 2 * (before + behind),
  above: before,
  right: 3 * ((behind * (values[1] - values[0])) / before + (before * (values[2] - values[1])) / behind),
});

function openSlopes(
  values: readonly number[],
  lengths: readonly number[],
  start: number | undefined,
  end: number | undefined,
): number[] {
  const last = values.length - 1;
  const chord = (index: number): number => (values[index + 1]! - values[index]!) / lengths[index]!;
  const fixed = (slope: number) => ({ below: 0, middle: 1, above: 0, right: slope });
  const rows: Tridiagonal = values.map((value, index) => {
    if (index === 0)
      return start === undefined ? { below: 0, middle: 2, above: 1, right: 3 * chord(0) } : fixed(start);
    if (index === last)
      return end === undefined ? { below: 1, middle: 2, above: 0, right: 3 * chord(last - 1) } : fixed(end);
    return smooth([values[index - 1]!, value, values[index + 1]!], lengths[index - 1]!, lengths[index]!);
  });
  return solvedInLine(rows);
}

/** Slopes of a closed curve, whose last value repeats its first. */
function roundSlopes(values: readonly number[], lengths: readonly number[]): number[] {
  const count = lengths.length;
  const rows: Tridiagonal = lengths.map((behind, index) => {
    const before = (index + count - 1) % count;
    return smooth([values[before]!, values[index]!, values[index + 1]!], lengths[before]!, behind);
  });
  const slopes = solvedAround(rows);
  return [...slopes, slopes[0]!];
}

/** The pieces between the points as one B-spline of degree three, each point a knot of three. */
function cubicOf(
  points: readonly Point[],
  lengths: readonly number[],
  slopesX: readonly number[],
  slopesY: readonly number[],
): Nurbs {
  const handle = (index: number, reach: number): Point => ({
    x: points[index]!.x + (slopesX[index]! * reach) / 3,
    y: points[index]!.y + (slopesY[index]! * reach) / 3,
  });
  const controls = lengths.flatMap((length, index) => [
    points[index]!,
    handle(index, length),
    handle(index + 1, -length),
  ]);
  controls.push(points.at(-1)!);
  let place = 0;
  const places = [0, ...lengths.map((length) => (place += length))];
  return {
    degree: 3,
    knots: [0, ...places.flatMap((knot) => [knot, knot, knot]), place],
    controls,
    weights: controls.map(() => 1),
  };
}
