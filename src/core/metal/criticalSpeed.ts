import { GRAVITY } from '$src/core/gravity';
import type { Metal } from './metal';

/**
 * Front speed above which a free surface has the energy to fold its own film in [m/s].
 *
 * V = 2 (γ g/ρ)^(1/4). Two routes give it: the inertial pressure ρ V²/2 against the most a surface bulging as a
 * hemisphere can hold back, and a drop that can rise no higher than a puddle stands.
 * Source: Campbell, Castings, 2nd ed., section 2.2.1 (the hemisphere balance read there; the second route from memory).
 *
 * It is a fourth root: a quarter more surface tension moves it by 6 %. Two figures are honest, three are not.
 */
export function criticalSpeedOf(surfaceTension: number, density: number): number {
  return 2 * Math.sqrt(Math.sqrt((surfaceTension * GRAVITY) / density));
}

/** The user's own critical speed when given, else the one from surface tension and density [m/s]. */
export function criticalSpeed(metal: Metal): number {
  return metal.criticalSpeedOverride ?? criticalSpeedOf(metal.surfaceTension.value, metal.density.value);
}
