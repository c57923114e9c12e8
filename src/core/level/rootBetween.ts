const MAX_STEPS = 100;

/**
 * Where a rising function changes sign between low (≤ 0) and high (≥ 0), to within `tolerance`.
 * False position with the stale end halved, which keeps both ends moving; halving steps take over when it stalls.
 */
export function rootBetween(
  valueAt: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let atLow = valueAt(low);
  let atHigh = valueAt(high);
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  let movedLow = 0;
  for (let step = 0; step < MAX_STEPS && high - low > tolerance; step++) {
    const straight = (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = step % 4 < 3 && straight > low && straight < high ? straight : (low + high) / 2;
    const value = valueAt(middle);
    if (value === 0) return middle;
    if (value < 0) {
      low = middle;
      atLow = value;
      if (movedLow > 0) atHigh /= 2;
      movedLow = 1;
    } else {
      high = middle;
      atHigh = value;
      if (movedLow < 0) atLow /= 2;
      movedLow = -1;
    }
  }
  return (low + high) / 2;
}
