import type { Point } from '$src/core/section/section';

/** Points that lie closer than this to a straight line are left out [m]. */
const STRAIGHT = 3e-5;

/**
 * The same line with fewer points: no point left out lies further than STRAIGHT from the new line.
 * From each kept point it holds the fan of directions that pass close enough to all points skipped since.
 */
export function straightened(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  let low = 0;
  let high = 0;
  let base = 0;
  let last: Point | null = null;
  for (const p of points) {
    const from = kept[kept.length - 1];
    if (!from) {
      kept.push(p);
      continue;
    }
    if (last && inFan(from, p, base, low, high) && distance(from, p) >= distance(from, last)) {
      const turn = turnFrom(from, p, base);
      const slack = STRAIGHT / distance(from, p);
      low = Math.max(low, turn - slack);
      high = Math.min(high, turn + slack);
      last = p;
      continue;
    }
    const anchor = last ?? from;
    if (distance(anchor, p) < 1e-9) continue;
    if (last) kept.push(last);
    base = Math.atan2(p.y - anchor.y, p.x - anchor.x);
    high = STRAIGHT / distance(anchor, p);
    low = -high;
    last = p;
  }
  if (last) kept.push(last);
  return kept;
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Direction from a to b against a base direction [rad], −π to π. */
function turnFrom(a: Point, b: Point, base: number): number {
  const turn = Math.atan2(b.y - a.y, b.x - a.x) - base;
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

function inFan(a: Point, b: Point, base: number, low: number, high: number): boolean {
  const turn = turnFrom(a, b, base);
  return turn >= low && turn <= high;
}
