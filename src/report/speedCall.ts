import type { PourRecord } from '$src/core/pour/record';

/**
 * Spread of peak front speed between 200 and 400 mesh cells that the verification allows, either way.
 * A difference inside it is not a finding.
 */
export const MESH_SPREAD = 0.08;

/**
 * Critical speed from clean against oxidised surface tension, either way: a 27 % change of surface tension moves
 * it 6 %, because it goes as the fourth root (docs/model.md).
 */
export const CRITICAL_SPREAD = 0.06;

export type SpeedCall = 'under' | 'too close to call' | 'over';

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Peak front speed [m/s] over all that is assumed: capillary stand from none to 180°, and the mesh. */
export function peakRange(record: PourRecord): Range | null {
  const { band, figures } = record;
  if (figures.peakFrontSpeed === null) return null;
  const peaks = [figures.peakFrontSpeed, band?.gateOff.peakFrontSpeed, band?.nonWetting.peakFrontSpeed];
  const known = peaks.filter((peak): peak is number => typeof peak === 'number');
  return { from: Math.min(...known) * (1 - MESH_SPREAD), to: Math.max(...known) * (1 + MESH_SPREAD) };
}

/** Critical front speed [m/s] with its own band. */
export function criticalRange(criticalSpeed: number): Range {
  return { from: criticalSpeed * (1 - CRITICAL_SPREAD), to: criticalSpeed * (1 + CRITICAL_SPREAD) };
}

/** Under or over only when the two bands do not touch; null when no front ran in the die. */
export function speedCall(record: PourRecord): SpeedCall | null {
  const peak = peakRange(record);
  if (peak === null) return null;
  const critical = criticalRange(record.plan.liquid.criticalSpeed);
  if (peak.to < critical.from) return 'under';
  return peak.from > critical.to ? 'over' : 'too close to call';
}
