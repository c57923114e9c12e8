import type { Spot } from './chart';

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
