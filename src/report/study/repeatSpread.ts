import type { PourPlan } from '$src/core/pour/plan';
import type { RepeatBand } from '$src/core/tilt/tilt';
import type { Study } from './study';

/** Standard deviations either way: about nineteen repeats in twenty lie within. */
export const DEVIATIONS = 2;

/** How repeats of the tilt of this pour were measured to differ; null when they were not. */
export function bandOf({ tilt }: PourPlan): RepeatBand | null {
  return tilt.kind === 'measured' ? (tilt.band ?? null) : null;
}

/** How far a setting strays from repeat to repeat as measured, either way; null when that is not known of it. */
export function measuredSpread(plan: PourPlan, setting: string): number | null {
  const band = bandOf(plan);
  if (!band) return null;
  const deviations: Readonly<Record<string, number>> = {
    'tilt.start': band.start,
    'tilt.time': band.time,
    'tilt.rate': band.rate,
  };
  const deviation = deviations[setting];
  return deviation === undefined ? null : DEVIATIONS * deviation;
}

/** How far repeats stray on each axis: as typed, else as measured; 0 where neither is known. */
export function spreadsOf({ axes, repeatability }: Study, plan: PourPlan): number[] {
  return axes.map(({ setting }, index) => repeatability[index] || (measuredSpread(plan, setting) ?? 0));
}
