import type { Point } from '$src/core/section/section';
import type { Underlay } from './underlay';

/** Marks nearer than this tell neither scale nor direction [px]. */
export const LEAST_APART = 5;

/** Where a place on the picture [px, y down] lies in the die frame [m]; null when the marks are too close to tell. */
export function underlayPlace({ marks, length, at, direction }: Underlay): ((spot: Point) => Point) | null {
  const [first, second] = marks;
  const [right, up] = [second.x - first.x, -(second.y - first.y)];
  const apart = Math.hypot(right, up);
  if (apart < LEAST_APART || !(length > 0)) return null;
  const scale = length / apart;
  const turn = direction - Math.atan2(up, right);
  const [c, s] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
  return ({ x, y }) => {
    const [dx, dy] = [x - first.x, -(y - first.y)];
    return { x: at.x + dx * c - dy * s, y: at.y + dx * s + dy * c };
  };
}
