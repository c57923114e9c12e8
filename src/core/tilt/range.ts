import { fromDegrees } from '$src/core/units';
import type { MachineLimits } from './tilt';

/** Inclinations that level fill and solver cover [rad]. The only place where the range is set. */
export const INCLINATION_RANGE = { highest: fromDegrees(75), lowest: fromDegrees(-100) } as const;

/** Rates a tilting machine may have [rad/s]. */
export const RATE_RANGE = { slowest: fromDegrees(1), quickest: fromDegrees(120) } as const;

/** A machine that can do all the solver covers. */
export const WIDEST_LIMITS: MachineLimits = {
  highestStart: INCLINATION_RANGE.highest,
  lowestEnd: INCLINATION_RANGE.lowest,
  slowest: RATE_RANGE.slowest,
  quickest: RATE_RANGE.quickest,
};

/**
 * The machine of a new tilt until the user gives the limits of their own: it can start and end anywhere, and turns a
 * quarter in two seconds at its quickest, about what a foundry's machine does (common practice, no source).
 */
export const DEFAULT_LIMITS: MachineLimits = { ...WIDEST_LIMITS, quickest: fromDegrees(45) };

/** Angles and rates closer than this count as equal, so that a limit typed in degrees is met exactly [rad, rad/s]. */
export const ROUNDING = 1e-9;

/** The least turn of one stage [rad]; less is a slip of typing. */
export const LEAST_TURN = fromDegrees(0.1);

/** A shorter stretch of a drawn tilt than this may be slower than the slowest rate: from rest and to rest it must [s]. */
export const SHORT_STRETCH = 0.5;

/** More stages than a machine's programme holds. */
export const MOST_STAGES = 50;

/** The machine's limits where they are narrower than what the solver covers. */
export function usableLimits(limits: MachineLimits): MachineLimits {
  return {
    highestStart: Math.min(limits.highestStart, INCLINATION_RANGE.highest),
    lowestEnd: Math.max(limits.lowestEnd, INCLINATION_RANGE.lowest),
    slowest: Math.max(limits.slowest, RATE_RANGE.slowest),
    quickest: Math.min(limits.quickest, RATE_RANGE.quickest),
  };
}

/** A machine that comes no further above level than this can only start level: half a degree, chosen [rad]. */
const LEVEL = fromDegrees(0.5);

/** Whether a highest start angle [rad] leaves nothing but a level start. */
export const isLevelAtMost = (highestStart: number): boolean => highestStart <= LEVEL;
