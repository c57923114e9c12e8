import type { Point } from '$src/core/section/section';

/** The cheapest way found from the first point of a line to one of its others. */
interface Way {
  readonly pieces: number;
  /** Sum of how far each piece strays; decides between ways of as few pieces. */
  readonly strays: number;
  readonly before: number;
}

/** Places between its ends at which a piece is looked at to choose between ways of as few pieces. */
const LOOKS = 16;

/**
 * As few points of a line as can stand for it: no choice of fewer of its points leaves all of them within `stray` of the
 * pieces between [as the points]. Of choices with as few, the one that strays least. x must never fall along the line.
 * Source: H. Imai & M. Iri, Computer Vision, Graphics, and Image Processing 36 (1986) 31 (from memory).
 */
export function fewestPoints(points: readonly Point[], stray: number): readonly Point[] {
  if (points.length < 3) return points;
  const ways: (Way | undefined)[] = [{ pieces: 0, strays: 0, before: -1 }];
  for (let from = 0; from < points.length - 1; from++) {
    const way = ways[from]!;
    for (const to of reachedFrom(points, from, stray)) {
      const known = ways[to];
      if (known && known.pieces <= way.pieces) continue;
      const strays = way.strays + strayBetween(points, from, to);
      const isBetter = !known || known.pieces > way.pieces + 1 || strays < known.strays;
      if (isBetter) ways[to] = { pieces: way.pieces + 1, strays, before: from };
    }
  }
  return alongWays(points, ways);
}

function alongWays(points: readonly Point[], ways: readonly (Way | undefined)[]): Point[] {
  const kept: Point[] = [];
  for (let at = points.length - 1; at >= 0; at = ways[at]!.before) kept.unshift(points[at]!);
  return kept;
}

/** Numbers of the points that one piece can reach from `from`, all points between within `stray` of it. */
function* reachedFrom(points: readonly Point[], from: number, stray: number): Generator<number> {
  const start = points[from]!;
  // Directions that pass all points so far; x never falls, so none is more than a quarter turn from the axis.
  let [lowest, highest] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let farthest = 0;
  for (let to = from + 1; to < points.length && lowest <= highest; to++) {
    const [dx, dy] = [points[to]!.x - start.x, points[to]!.y - start.y];
    const [distance, direction] = [Math.hypot(dx, dy), Math.atan2(dy, dx)];
    // A point further off than the end of the piece may stand beside it no longer.
    const isBeside = farthest <= distance || allNear(points, from, to, stray);
    if (isBeside && direction >= lowest && direction <= highest) yield to;
    farthest = Math.max(farthest, distance);
    if (distance <= stray) continue;
    const half = Math.asin(stray / distance);
    lowest = Math.max(lowest, direction - half);
    highest = Math.min(highest, direction + half);
  }
}

const allNear = (points: readonly Point[], from: number, to: number, stray: number): boolean =>
  points.slice(from + 1, to).every((point) => strayOf(point, points[from]!, points[to]!) <= stray);

/** How far the points between two strayed from the piece that joins them, looked at in a few places at most. */
function strayBetween(points: readonly Point[], from: number, to: number): number {
  const step = Math.max(1, (to - from) / LOOKS);
  let most = 0;
  for (let at = from + step; at < to; at += step)
    most = Math.max(most, strayOf(points[Math.floor(at)]!, points[from]!, points[to]!));
  return most;
}

/** From a point to the stretch between two others. */
function strayOf(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}
