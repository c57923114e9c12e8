import { GRAVITY } from '$src/core/gravity';

/** Parabolic basin z = h0 ((x/a)² − 1) with a = 1 m, h0 = 0.5 m, x from its middle. */
export const BASIN = { a: 1, h0: 0.5 } as const;

export const basinBed = (x: number): number => BASIN.h0 * ((x / BASIN.a) ** 2 - 1);

const OMEGA = Math.sqrt(2 * GRAVITY * BASIN.h0) / BASIN.a;
export const THACKER_PERIOD = (2 * Math.PI) / OMEGA;

/** Middle of the swinging metal [m] and its speed [m/s] (Thacker 1981, planar surface), middle −a/2 at t = 0. */
export const thackerMiddle = (t: number): number => (-BASIN.a / 2) * Math.cos(OMEGA * t);
export const thackerSpeed = (t: number): number => ((BASIN.a * OMEGA) / 2) * Math.sin(OMEGA * t);

/** The same with linear friction τ, started in the middle at speed `start` (Sampson, Easton & Singh 2003). */
export function rubbedMiddle(t: number, tau: number, start: number): number {
  const s = Math.sqrt((8 * GRAVITY * BASIN.h0) / BASIN.a ** 2 - tau * tau) / 2;
  return (start / s) * Math.exp((-tau * t) / 2) * Math.sin(s * t);
}

/** Depth at x when the metal's middle is at `middle`. */
export const basinDepth = (x: number, middle: number): number =>
  Math.max(0, BASIN.h0 * (1 - ((x - middle) / BASIN.a) ** 2));
