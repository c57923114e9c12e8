import { cosine, sine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';

/**
 * How thick a large puddle stands on a level plate [m]: h = 2 √(γ/(ρ g)) sin(θ/2).
 * Surface tension γ [N/m], density ρ [kg/m³], contact angle θ [rad].
 * Source: de Gennes, Brochard-Wyart & Quéré, Capillarity and Wetting Phenomena, 2004 (from memory);
 * the half-angle form and the force balance 2 γ (1 − cos θ) = ρ g h² agree.
 */
export function standHeight(surfaceTension: number, density: number, contactAngle: number): number {
  return 2 * capillaryLength(surfaceTension, density) * sine(contactAngle / 2);
}

/** √(γ/(ρ g)) [m]: below this length surface tension is stronger than weight. */
export function capillaryLength(surfaceTension: number, density: number): number {
  return Math.sqrt(surfaceTension / (density * GRAVITY));
}

/**
 * γ (1 − cos θ)/ρ [m³/s²]: what the level fill and the front condition need of capillarity.
 * The stand on a floor whose normal feels g cos(slope) is √(2 sigma / (g cos(slope))).
 */
export function standSigma(surfaceTension: number, density: number, contactAngle: number): number {
  return (surfaceTension * (1 - cosine(contactAngle))) / density;
}
