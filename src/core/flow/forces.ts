import { cosine } from '$src/core/elementary/sine';
import type { Conditions } from './conditions';

/** What drives and holds the metal during one step; the turning body enters here and nowhere else. */
export interface Forces {
  /** [m/s²] */
  gravity: number;
  /** Sine and cosine of the inclination at the end of the step; cosine ≥ 0. */
  sin: number;
  cos: number;
  /** Rate [rad/s] and acceleration [rad/s²] of the inclination. */
  rate: number;
  acceleration: number;
  /** Kinematic viscosity [m²/s] and drag coefficient of the 'metal' friction law. */
  viscosity: number;
  drag: number;
  /** Capillary resistance of an open front, γ (1 − cos θ)/ρ, and of one standing between floor and roof, 2 γ |cos θ|/ρ (0 when wetting) [m³/s²]. */
  openFront: number;
  slotFront: number;
  capillaryGate: boolean;
  timeWeight: number;
  conditions: Conditions;
}

/** Resistances of a front per unit width over density [m³/s²]; see docs/model.md, capillary gate. */
export function frontResistance(
  surfaceTension: number,
  contactAngle: number,
  density: number,
): { openFront: number; slotFront: number } {
  const cos = cosine(contactAngle);
  return {
    openFront: (surfaceTension * (1 - cos)) / density,
    slotFront: (2 * surfaceTension * Math.max(0, -cos)) / density,
  };
}
