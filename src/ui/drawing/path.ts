import type { Point } from '$src/core/section/section';
import type { Spot } from './view';

const short = (value: number): string => value.toFixed(1);

/** Straight path through places on the page. */
export function pathThrough(spots: readonly Spot[], closed = false): string {
  if (spots.length === 0) return '';
  let d = '';
  for (const s of spots) d += `${d === '' ? 'M' : 'L'}${short(s.x)} ${short(s.y)}`;
  return closed ? `${d}Z` : d;
}

/** Straight path through points of the die frame [m], about the pivot at a scale [px per m], y down: for a group turned as a whole. */
export function bodyPath(points: readonly Point[], pivot: Point, scale: number, closed = false): string {
  return pathThrough(
    points.map((p) => ({ x: (p.x - pivot.x) * scale, y: (pivot.y - p.y) * scale })),
    closed,
  );
}
