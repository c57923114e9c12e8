import type { Point } from '$src/core/section/section';
import { fromMillimetres, toMillimetres } from '$src/core/units';
import type { DrawnLine } from '$src/fromDrawing/drawing';

/** Numbers of the lines that are most likely floor and roof, for a person to correct. */
export function likelyLines(lines: readonly DrawnLine[]): { readonly floor: number; readonly roof: number } {
  const named = (pattern: RegExp): number =>
    lines.findIndex(({ name, layer }) => pattern.test(`${layer} ${name}`));
  const [floor, roof] = [named(/floor|bottom|lower/i), named(/roof|top|upper/i)];
  if (floor >= 0 && roof >= 0 && floor !== roof) return { floor, roof };
  const byLength = lines
    .map((line, index) => ({ index, line, width: widthOf(line) }))
    .sort((a, b) => b.width - a.width);
  const [first, second] = byLength;
  if (!first) return { floor: -1, roof: -1 };
  if (first.line.isClosed || !second) return { floor: first.index, roof: first.index };
  const isFirstLower = heightOf(first.line) <= heightOf(second.line);
  return isFirstLower
    ? { floor: first.index, roof: second.index }
    : { floor: second.index, roof: first.index };
}

const widthOf = ({ points }: DrawnLine): number => {
  const xs = points.map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
};
const heightOf = ({ points }: DrawnLine): number => points.reduce((sum, { y }) => sum + y, 0) / points.length;

/** Corners further off than this share of the length are not meant. */
const NEAR = 0.12;

/**
 * A place on the floor or roof that is likely meant [m from the back wall]: the corner nearest to where it is expected,
 * else the place itself in whole millimetres. `corners` are places along the axis, `length` is that of the section.
 */
export function likelyPlace(expected: number, corners: readonly number[], length: number): number {
  const apart = (x: number): number => Math.abs(x - expected);
  const inside = corners.filter((x) => x > 1e-6 && x < length - 1e-6 && apart(x) < NEAR * length);
  if (inside.length === 0) return fromMillimetres(Math.round(toMillimetres(expected)));
  return inside.reduce((best, x) => (apart(x) < apart(best) ? x : best));
}

/** A line that turns less than this at a point goes on in a curve [rad]. */
const SHARP = 0.2;

/** Places along the axis where a wall turns a corner, and not merely goes on in a curve [m]. */
export function sharpPlaces(points: readonly Point[]): number[] {
  const way = (index: number): number =>
    Math.atan2(points[index]!.y - points[index - 1]!.y, points[index]!.x - points[index - 1]!.x);
  return points
    .map(({ x }, index) => ({ x, index }))
    .filter(
      ({ index }) => index > 0 && index < points.length - 1 && Math.abs(way(index + 1) - way(index)) > SHARP,
    )
    .map(({ x }) => x);
}
