import type { Point } from './section';

/** Places along the axis closer than this are one place [m]: a nanometre, far below any drawing. */
export const SAME_PLACE = 1e-9;

/** Which side of a vertical step is meant. */
export type Side = 'left' | 'right';

/**
 * Height of a floor or roof line at x [m], just left or just right of it where the line has a vertical step.
 * Beyond its ends the line keeps its end heights.
 */
export function lineAt(line: readonly Point[], x: number, side: Side): number {
  return side === 'left' ? heightLeftOf(line, x) : heightRightOf(line, x);
}

function heightLeftOf(line: readonly Point[], x: number): number {
  const next = line.findIndex((point) => point.x >= x - SAME_PLACE);
  if (next < 0) return line.at(-1)!.y;
  if (next === 0) return line[0]!.y;
  return between(line[next - 1]!, line[next]!, x);
}

function heightRightOf(line: readonly Point[], x: number): number {
  const before = line.findLastIndex((point) => point.x <= x + SAME_PLACE);
  if (before < 0) return line[0]!.y;
  if (before === line.length - 1) return line.at(-1)!.y;
  return between(line[before]!, line[before + 1]!, x);
}

function between(a: Point, b: Point, x: number): number {
  if (Math.abs(x - a.x) <= SAME_PLACE) return a.y;
  if (Math.abs(x - b.x) <= SAME_PLACE) return b.y;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
