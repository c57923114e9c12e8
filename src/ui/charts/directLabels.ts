import type { Plot, Spot } from './chart';

export interface LabelWanted {
  readonly key: string;
  readonly text: string;
  /** The curve in pixels. */
  readonly points: readonly Spot[];
  /** Room for the curve's marker before the words [px]. */
  readonly mark?: number;
}

export interface LabelPlaced {
  readonly key: string;
  readonly text: string;
  /** Middle of the label, and baseline and left edge of its words [px]. */
  readonly x: number;
  readonly y: number;
  readonly wordsAt: number;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const CHARACTER = 6.4;
const LINE = 15;
/** Shares along the curve tried in this order. */
const SHARES = [0.8, 0.62, 0.45, 0.3, 0.92, 0.15];

export const textWidth = (text: string): number => text.length * CHARACTER + 6;

const boxAt = (x: number, baseline: number, width: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: baseline - LINE + 3,
  bottom: baseline + 3,
});

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const isInside = (box: Box, plot: Plot): boolean =>
  box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom;

/** Points at least every few pixels, so that a steep stretch cannot slip through a label. */
function dense(points: readonly Spot[]): Spot[] {
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
function hits(box: Box, points: readonly Spot[]): number {
  let count = 0;
  for (const [x, y] of points) if (x > box.left && x < box.right && y > box.top && y < box.bottom) count++;
  return count;
}

interface Candidate {
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

function candidates(points: readonly Spot[], width: number, plot: Plot): Candidate[] {
  return SHARES.flatMap((share) => {
    const point = points[Math.round(share * (points.length - 1))]!;
    const places: readonly Spot[] = [
      [point[0], point[1] - 9],
      [point[0], point[1] + 18],
      [point[0] + width / 2 + 9, point[1] + 4],
      [point[0] - width / 2 - 9, point[1] + 4],
    ];
    return places.map(([wanted, y]) => {
      const x = Math.min(plot.right - width / 2, Math.max(plot.left + width / 2, wanted));
      return { x, y, box: boxAt(x, y, width) };
    });
  });
}

/**
 * A place for each label beside its own curve, off every curve, off the other labels and `lines` and inside the plot.
 * A label that finds only bad places takes the least bad one: an unnamed line would be worse.
 */
export function placeDirectLabels(
  wanted: readonly LabelWanted[],
  plot: Plot,
  taken: readonly Box[] = [],
  lines: readonly (readonly Spot[])[] = [],
): LabelPlaced[] {
  const curves = [...wanted.map(({ points }) => dense(points)), ...lines.map(dense)];
  const boxes = [...taken];
  return wanted.flatMap(({ key, text, mark = 0 }, index) => {
    const own = curves[index]!;
    if (own.length === 0) return [];
    const cost = ({ box }: Candidate, order: number): number =>
      curves.reduce((sum, curve) => sum + hits(box, curve) * 3, 0) +
      boxes.filter((other) => meet(box, other)).length * 200 +
      (isInside(box, plot) ? 0 : 400) +
      order;
    const tried = candidates(own, textWidth(text) + mark, plot).map((candidate, order) => ({
      candidate,
      cost: cost(candidate, order),
    }));
    const best = tried.reduce((least, each) => (each.cost < least.cost ? each : least)).candidate;
    boxes.push(best.box);
    return [{ key, text, x: best.x, y: best.y, wordsAt: best.box.left + mark + 3 }];
  });
}

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

/** Places for markers along a curve, evenly by length, so that a marker falls on short curves too [px]. */
export function markerSpots(points: readonly Spot[], spacing = 64): Spot[] {
  const spots: Spot[] = [];
  const lengths = points.map((point, index) => {
    const before = points[index - 1];
    return before ? Math.hypot(point[0] - before[0], point[1] - before[1]) : 0;
  });
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const step = whole / Math.max(1, Math.round(whole / spacing));
  let [gone, next] = [0, step / 2];
  for (let index = 1; index < points.length; index++) {
    const [length, a, b] = [lengths[index]!, points[index - 1]!, points[index]!];
    while (length > 0 && next <= gone + length) {
      const share = (next - gone) / length;
      spots.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
      next += step;
    }
    gone += length;
  }
  return spots;
}
