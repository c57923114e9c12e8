import { exponential, logarithm } from '$src/core/elementary/exponential';

/**
 * A body of one temperature that gives heat to surroundings: T = T_out + (T_0 − T_out) exp(−t/τ), τ = ρ c M/h.
 * Holds while h M/k is under about 0.1. Source: Incropera, Heat and Mass Transfer (from memory).
 */
export function lumpedTemperature(start: number, surroundings: number, time: number, tau: number): number {
  return surroundings + (start - surroundings) * exponential(-time / tau);
}

/** τ [s] from density [kg/m³], specific heat [J/(kg K)], modulus [m] and heat transfer [W/(m² K)]. */
export function lumpedTimeConstant(density: number, heat: number, modulus: number, transfer: number): number {
  return (density * heat * modulus) / transfer;
}

/** When the body has come to a temperature [s]; Infinity when it never does. */
export function lumpedTime(start: number, surroundings: number, temperature: number, tau: number): number {
  const share = (start - surroundings) / (temperature - surroundings);
  return share >= 1 ? tau * logarithm(share) : Number.POSITIVE_INFINITY;
}
