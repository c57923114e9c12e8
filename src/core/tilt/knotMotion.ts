import { sampledMotion } from './sampledMotion';
import type { Knot, KnotTilt, Motion } from './tilt';

/**
 * The motion through the knots: monotone cubics (Fritsch and Carlson 1980), so between two knots the body never swings
 * past either. From rest and to rest.
 */
export function knotMotion({ start, knots }: Pick<KnotTilt, 'start' | 'knots'>): Motion {
  const all = [{ time: 0, inclination: start }, ...knots];
  return sampledMotion({
    time: all.map((knot) => knot.time),
    inclination: all.map((knot) => knot.inclination),
    rate: all.map((_, index) => rateAt(all, index)),
  });
}

/** Weighted harmonic mean of the slopes on either side; 0 at both ends and where the slope changes sign. */
function rateAt(knots: readonly Knot[], index: number): number {
  if (index === 0 || index === knots.length - 1) return 0;
  const before = stretch(knots, index - 1);
  const after = stretch(knots, index);
  if (before.slope * after.slope <= 0) return 0;
  const first = 2 * after.time + before.time;
  const second = after.time + 2 * before.time;
  return (first + second) / (first / before.slope + second / after.slope);
}

function stretch(knots: readonly Knot[], index: number): { time: number; slope: number } {
  const from = knots[index]!;
  const to = knots[index + 1]!;
  const time = to.time - from.time;
  return { time, slope: (to.inclination - from.inclination) / time };
}
