import type { Fold, PourRecord } from '$src/core/pour/record';
import { cavityVolume } from '$src/core/section/cavity';

/** Metal's rate into the die is taken over this long up to the moment it shut gas in [s]. Ours. */
const BEFORE = 0.06;

/**
 * Free vent that gas shut in would have needed to leave as fast as the metal came [m²], in each cavity; 0 when none was
 * shut in. Gas without an open vent holds the metal back, so how fast it was pressed then tells too little: the metal's
 * rate just before is asked as well.
 */
export function ventNeeded({ folds, series, plan: { section } }: PourRecord): number {
  const areas = folds
    .filter(({ kind }) => kind === 'gas sealed in')
    .map(({ time, details }) => {
      const pressed = details['vent_area_for_100_Pa_m2'] ?? 0;
      return Math.max(pressed, areaForFlow(details) * rateUpTo(series, time) * cavityVolume(section));
    });
  return Math.max(0, ...areas) / section.cavities;
}

/** Vent for a flow of gas [m² for each m³/s], as the fold itself has it for the gas that was pressed. */
function areaForFlow(details: Fold['details']): number {
  const pressed = details['gas_displaced_m3_per_s'] ?? 0;
  return pressed > 0 ? (details['vent_area_for_100_Pa_m2'] ?? 0) / pressed : 0;
}

/** Share of the die that filled in a second, up to a time [1/s]. */
function rateUpTo({ time, filledShare }: PourRecord['series'], until: number): number {
  const found = time.findIndex((at) => at >= until);
  const last = found < 0 ? time.length - 1 : found;
  const first = time.findIndex((at) => at >= time[last]! - BEFORE - 1e-9);
  return last > first ? (filledShare[last]! - filledShare[first]!) / (time[last]! - time[first]!) : 0;
}
