import type { PourRecord } from '$src/core/pour/record';
import type { PredictedPour } from './scrap';

/** What a pour, computed as it now stands, lets expect of its castings. */
export function predictedPour(
  { id, name }: { readonly id: string; readonly name: string },
  { figures, plan }: PourRecord,
): PredictedPour {
  const { peakFrontSpeed, lap } = figures;
  return {
    id,
    name,
    frontSpeed: peakFrontSpeed === null ? null : peakFrontSpeed / plan.liquid.criticalSpeed,
    lapMargin: lap && Number.isFinite(lap.margin) ? lap.margin : null,
  };
}
