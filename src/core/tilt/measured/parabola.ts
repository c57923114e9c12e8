import type { Reading } from './readRows';

/** Rounding of times in a file: a reading just at the end of a window is in it [s]. */
export const AT_EDGE = 1e-12;

/**
 * Value at a time of the parabola through these readings, least squares (Savitzky and Golay's way, for uneven steps);
 * a line or a level through fewer than three. null without any. Angles in rad.
 * @param scale about half of the time they span [s]
 */
export function parabolaAt(near: readonly Reading[], time: number, scale: number): number | null {
  if (near.length === 0) return null;
  const order = Math.min(2, near.length - 1);
  const sums = new Array<number>(2 * order + 1).fill(0);
  const right = new Array<number>(order + 1).fill(0);
  for (const one of near) {
    const u = (one.time - time) / (scale || 1);
    for (let p = 0; p < sums.length; p++) sums[p] = sums[p]! + u ** p;
    for (let p = 0; p < right.length; p++) right[p] = right[p]! + one.angle * u ** p;
  }
  return valueAtMiddle(sums, right);
}

/** First unknown of the normal equations, by elimination. */
function valueAtMiddle(sums: readonly number[], right: readonly number[]): number {
  const n = right.length;
  const rows = right.map((value, i) => [...Array.from({ length: n }, (_, j) => sums[i + j]!), value]);
  for (let i = n - 1; i > 0; i--) {
    for (let k = 0; k < i; k++) {
      const factor = rows[k]![i]! / rows[i]![i]!;
      for (let j = 0; j <= n; j++) rows[k]![j] = rows[k]![j]! - factor * rows[i]![j]!;
    }
  }
  return rows[0]![n]! / rows[0]![0]!;
}
