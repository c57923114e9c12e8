import { GRAVITY } from '$src/core/gravity';
import { rootBetween } from '$src/verify/measure';

/** Depth at which discharge per width q [m²/s] has least energy [m]. */
export const criticalDepth = (q: number): number => Math.cbrt((q * q) / GRAVITY);

export type Branch = 'slow' | 'fast';

/** Depth of a steady stream of q [m²/s] with head `energy` above its floor [m]: the slow (deep) or fast (thin) root. */
export function depthOfEnergy(q: number, energy: number, branch: Branch): number {
  const critical = criticalDepth(q);
  const excess = (h: number) => h + (q * q) / (2 * GRAVITY * h * h) - energy;
  if (excess(critical) >= 0) return critical;
  return branch === 'slow'
    ? rootBetween(critical, energy, excess)
    : rootBetween(1e-6 * critical, critical, excess);
}

/** Parabolic bump of Goutal & Maurel 1997, x from 8 to 12 m. */
export const bump = (x: number): number => (x > 8 && x < 12 ? 0.2 - 0.05 * (x - 10) ** 2 : 0);

/** Subcritical flow over the bump, depth at the outlet given. */
export function subcriticalBump(q: number, outlet: number): (x: number) => number {
  const head = outlet + (q * q) / (2 * GRAVITY * outlet * outlet);
  return (x) => depthOfEnergy(q, head - bump(x), 'slow');
}

/** Flow that turns fast at the crest and stays so. */
export function transcriticalBump(q: number): (x: number) => number {
  const head = 0.2 + 1.5 * criticalDepth(q);
  return (x) => depthOfEnergy(q, head - bump(x), x < 10 ? 'slow' : 'fast');
}

/** Place of the hydraulic jump behind the crest, where the force of both sides is equal [m]. */
export function jumpPlace(q: number, outlet: number): number {
  const fast = transcriticalBump(q);
  const slow = subcriticalBump(q, outlet);
  const force = (h: number) => (q * q) / (GRAVITY * h) + (h * h) / 2;
  return rootBetween(10.5, 11.999, (x) => force(fast(x)) - force(slow(x)));
}

export function bumpWithJump(q: number, outlet: number): (x: number) => number {
  const place = jumpPlace(q, outlet);
  const fast = transcriticalBump(q);
  const slow = subcriticalBump(q, outlet);
  return (x) => (x < place ? fast(x) : slow(x));
}

/** Depth behind over depth ahead of a jump with this Froude number ahead (Bélanger). */
export const conjugateRatio = (froude: number): number => (Math.sqrt(1 + 8 * froude * froude) - 1) / 2;

/** Froude number ahead of a bore of this depth ratio: the inverse of `conjugateRatio`. */
export const boreFroude = (ratio: number): number => Math.sqrt((ratio * (ratio + 1)) / 2);

/** A stream h1 deep at speed u1 stopped by a wall: depth behind the bore that runs back, and its speed. */
export function stoppedStream(h1: number, u1: number): { readonly depth: number; readonly bore: number } {
  const depth = rootBetween(
    h1 * (1 + 1e-12),
    100 * h1 + u1 * u1,
    (h) => (h - h1) * Math.sqrt((GRAVITY / 2) * (1 / h + 1 / h1)) - u1,
  );
  return { depth, bore: (h1 * u1) / (depth - h1) };
}

/** A channel whose steady depth is prescribed and whose bed is worked out from it (MacDonald et al. 1997). */
export interface Manufactured {
  readonly length: number;
  readonly q: number;
  depth(x: number): number;
  /** Friction slope at a depth. */
  friction(h: number): number;
}

/** Bed of a manufactured channel [m], 0 at its end: S0 = (1 − q²/(g h³)) dh/dx + Sf, by Simpson on `pieces` pieces. */
export function manufacturedBed(channel: Manufactured, pieces: number): (x: number) => number {
  const { length, q, depth, friction } = channel;
  const step = length / pieces;
  const tiny = 1e-6 * length;
  const slope = (x: number) => {
    const h = depth(x);
    const rise = (depth(x + tiny) - depth(x - tiny)) / (2 * tiny);
    return (1 - (q * q) / (GRAVITY * h ** 3)) * rise + friction(h);
  };
  const height = new Float64Array(pieces + 1);
  for (let k = pieces - 1; k >= 0; k--) {
    const x = k * step;
    height[k] = height[k + 1]! + (step / 6) * (slope(x) + 4 * slope(x + step / 2) + slope(x + step));
  }
  return (x) => {
    const at = Math.min(pieces - 1, Math.max(0, Math.floor(x / step)));
    const from = at * step;
    const part = x - from;
    return height[at]! - (part / 6) * (slope(from) + 4 * slope(from + part / 2) + slope(x));
  };
}

export const MACDONALD_LONG: Manufactured = {
  length: 1000,
  q: 2,
  depth: (x) => Math.cbrt(4 / GRAVITY) * (1 + 0.5 * Math.exp(-16 * (x / 1000 - 0.5) ** 2)),
  friction: (h) => (0.033 ** 2 * 4) / h ** (10 / 3),
};

const DARCY = 0.03;
const BENCH_Q = 0.006;
const darcySlope = (h: number) => (DARCY * BENCH_Q ** 2) / (8 * GRAVITY * h ** 3);

export const BENCH_SLOW: Manufactured = {
  length: 0.4,
  q: BENCH_Q,
  depth: (x) => 0.02 + 0.008 * Math.exp(-20 * (x / 0.4 - 0.5) ** 2),
  friction: darcySlope,
};

export const BENCH_FAST: Manufactured = {
  length: 0.4,
  q: BENCH_Q,
  depth: (x) => 0.006 + 0.0018 * Math.sin((2 * Math.PI * x) / 0.4),
  friction: darcySlope,
};

/** Contraction of the two width cases. */
export const throatWidth = (x: number): number => 0.1 - 0.03 * Math.exp(-(((x - 0.5) / 0.12) ** 2));

export const THROAT_ENERGY = 0.06;

/** Greatest discharge that passes the throat with that energy [m³/s]. */
export const chokedDischarge = 0.07 * Math.sqrt(GRAVITY) * ((2 / 3) * THROAT_ENERGY) ** 1.5;

/** Depth of a steady stream through the contraction; `chokes` = slow before the throat, fast behind it. */
export const throatDepth =
  (discharge: number, chokes: boolean) =>
  (x: number): number =>
    depthOfEnergy(discharge / throatWidth(x), THROAT_ENERGY, chokes && x > 0.5 ? 'fast' : 'slow');

/** Depth of even flow down a slope with Manning friction in a wide channel [m]. */
export const normalDepth = (q: number, manning: number, slope: number): number =>
  ((manning * q) / Math.sqrt(slope)) ** 0.6;
