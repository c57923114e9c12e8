import type { Box } from '$src/report/drawing/box';
import type { Plot, Spot } from './chart';

const CHARACTER = 6.4;
const LINE = 15;

export const textWidth = (text: string): number => text.length * CHARACTER + 6;

/** Words of this width about their middle, on this baseline. */
export const boxAt = (x: number, baseline: number, width: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: baseline - LINE + 3,
  bottom: baseline + 3,
});

export const isInside = (box: Box, plot: Plot): boolean =>
  box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom;

/** Points at least every few pixels, so that a steep stretch cannot slip through a label. */
export function dense(points: readonly Spot[]): Spot[] {
  const spots: Spot[] = [];
  points.forEach((point, index) => {
    const next = points[index + 1] ?? point;
    const steps = Math.min(60, Math.ceil(Math.hypot(next[0] - point[0], next[1] - point[1]) / 6));
    spots.push(point);
    for (let step = 1; step < steps; step++) {
      const share = step / steps;
      spots.push([point[0] + (next[0] - point[0]) * share, point[1] + (next[1] - point[1]) * share]);
    }
  });
  return spots;
}

/** Many boxes are tried on each curve, at each move of a hand: a plain count. */
export function hits(box: Box, points: readonly Spot[]): number {
  let count = 0;
  for (const [x, y] of points) if (x > box.left && x < box.right && y > box.top && y < box.bottom) count++;
  return count;
}

/** A curve made dense, its points by the strip of the chart they lie in: a box looks at a few strips, not at the curve. */
export type Strips = ReadonlyMap<number, readonly Spot[]>;
/** Width of a strip [px]. */
const STRIP = 8;

export function stripsOf(points: readonly Spot[]): Strips {
  const strips = new Map<number, Spot[]>();
  for (const point of dense(points)) {
    const strip = Math.floor(point[0] / STRIP);
    const held = strips.get(strip);
    if (held) held.push(point);
    else strips.set(strip, [point]);
  }
  return strips;
}

/** The same count as `hits` of the dense curve. */
export function hitsIn(box: Box, strips: Strips): number {
  let count = 0;
  for (let strip = Math.floor(box.left / STRIP); strip * STRIP < box.right; strip++)
    count += hits(box, strips.get(strip) ?? NONE);
  return count;
}

const NONE: readonly Spot[] = [];

/** Left or right end of the plot for words, whichever the curves leave freer; the preferred one when both are as free. */
export function freerSide(
  curves: readonly (readonly Spot[])[],
  plot: Plot,
  box: { width: number; top: number; bottom: number },
  preferred: 'left' | 'right' = 'left',
): 'left' | 'right' {
  const all = curves.map(dense);
  const count = (left: number): number => {
    const room = { left, right: left + box.width, top: box.top, bottom: box.bottom };
    return all.reduce((sum, curve) => sum + hits(room, curve), 0);
  };
  const [left, right] = [count(plot.left), count(plot.right - box.width)];
  if (left === right) return preferred;
  return left < right ? 'left' : 'right';
}
