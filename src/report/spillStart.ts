import type { PourRecord } from '$src/core/pour/record';
import { fromCubicCentimetres } from '$src/core/units';

/** So much over a rim is seen [m³]. */
const SEEN = fromCubicCentimetres(0.1);

/** When metal is first seen to leave over a rim [s], and how the body lies then [rad]; null when it is not. */
export function spillStart({
  series,
}: Pick<PourRecord, 'series'>): { readonly time: number; readonly inclination: number } | null {
  const index = series.spilled.findIndex((spilled) => spilled > SEEN);
  return index < 0 ? null : { time: series.time[index]!, inclination: series.inclination[index]! };
}
