import type { Machine } from './machine/machine';

/**
 * What the user asks of the machine. Inclination [rad] is the angle of the die axis above horizontal:
 * positive = the die runs uphill away from the basin. A pour turns from a higher to a lower inclination.
 */
export interface MachineLimits {
  /** Highest inclination the machine can start from [rad]. */
  readonly highestStart: number;
  /** Lowest inclination it can end at [rad]. */
  readonly lowestEnd: number;
  /** Slowest and fastest rate [rad/s]. */
  readonly slowest: number;
  readonly quickest: number;
}

/** One stage of a staged tilt: turn to `to` at `rate`, or in `time`. */
export type Stage =
  | { readonly to: number; readonly rate: number }
  | { readonly to: number; readonly time: number };

interface TiltBase {
  /** Inclination when the tilt begins [rad]. */
  readonly start: number;
  readonly limits: MachineLimits;
}

interface ProgrammedBase extends TiltBase {
  /** Time over which the rate changes at the start, at the end and between stages [s]. */
  readonly smoothing: number;
}

/** A tilt that a drive or a hand is asked for. */
export type ProgrammedTilt =
  | (ProgrammedBase & { readonly kind: 'steady'; readonly end: number; readonly rate: number })
  | (ProgrammedBase & { readonly kind: 'staged'; readonly stages: readonly Stage[] });

export type SteadyTilt = Extract<ProgrammedTilt, { kind: 'steady' }>;

/** A machine let go at `start`: it falls to its lower stop at `end` [rad] as weights and damper have it. */
export interface MachineTilt extends TiltBase {
  readonly kind: 'machine';
  readonly end: number;
  readonly machine: Machine;
}

/** Where the body is at a time [s] after the start, inclination [rad]. */
export interface Knot {
  readonly time: number;
  readonly inclination: number;
}

/** How repeated tilts of one machine differ: standard deviations, with how many were measured. */
export interface RepeatBand {
  /** Repeats measured, 2 or more. */
  readonly count: number;
  /** Start inclination [rad], time from rest to rest [s], rate of the whole turn [rad/s]. */
  readonly start: number;
  readonly time: number;
  readonly rate: number;
}

/** A tilt through knots; the first is `start` at time 0 and is not repeated. Drawn by hand, or measured on the machine. */
export interface KnotTilt extends TiltBase {
  readonly kind: 'drawn' | 'measured';
  readonly knots: readonly Knot[];
  /** Where it comes from, e.g. the file and what was done to it; may be empty. */
  readonly origin: string;
  /** How repeats of a measured tilt differ; absent = measured once, or drawn. Decides no run. */
  readonly band?: RepeatBand;
  /** What is known of the readings of a measured tilt; absent = nothing, or drawn. Decides no run. */
  readonly readings?: KnownReadings;
}

/** Readings a measured tilt was made of: what a fit needs to say how sure it is. */
export interface KnownReadings {
  /** A knot is a parabola through the readings of this time about it [s]; 0 = not smoothed. */
  readonly smoothedOver: number;
  /** Scatter of one reading, a standard deviation [rad]. */
  readonly scatter: number;
  /** Readings at rest that start and end are means of. */
  readonly before: number;
  readonly after: number;
}

/** A tilt that is known without a pour. */
export type PlainTilt = ProgrammedTilt | MachineTilt | KnotTilt;

/** A tilt that each pour works out for itself: turned so that its front keeps a speed (see core/pour/frontLedPour). */
export interface FrontLedTilt extends TiltBase {
  readonly kind: 'front-led';
  readonly end: number;
  /** Front speed wanted, as a share of the metal's critical speed. */
  readonly share: number;
  /** The front has to be at the die end this soon after it passed the mouth [s]; null = no matter. */
  readonly homeWithin: number | null;
}

export type Tilt = PlainTilt | FrontLedTilt;

/** The inclination in time, ready for the solver. All three are continuous except rate at the ends when smoothing is 0. */
export interface Motion {
  /** Time from start to standstill at the end [s]. */
  readonly duration: number;
  readonly start: number;
  readonly end: number;
  /** Inclination at time t [rad]; constant before 0 and after `duration`. */
  inclinationAt(time: number): number;
  /** Rate d(inclination)/dt [rad/s], negative while tipping. */
  rateAt(time: number): number;
  /** d(rate)/dt [rad/s²]. */
  accelerationAt(time: number): number;
}
