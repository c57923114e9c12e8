import { logarithm } from '$src/core/elementary/exponential';
import { coolingTime } from './cooling';
import { enthalpyAtSolidFraction, enthalpyOf } from './enthalpy';
import type { Freezing } from './freezing';

/** What meets the metal: heat transfer [W/(m² K)] and the die's temperature [K]. */
export interface Contact {
  readonly transfer: number;
  readonly dieTemperature: number;
}

/** One freezing temperature instead of a range: what the textbook formulas use. All SI, temperatures [K]. */
export interface OnePoint {
  readonly density: number;
  readonly latentHeat: number;
  readonly liquidHeat: number;
  readonly freezingTemperature: number;
}

/**
 * Freezing time between coated walls [s], linear in the modulus M [m]: t = ρ M (L + c ΔT)/(h (T_f − T_die)).
 * Textbook shorthand, a little long: superheat really leaves at a larger difference of temperature.
 * Source: Flemings, Solidification Processing, 1974 (from memory).
 */
export function simpleFreezingTime(
  metal: OnePoint,
  modulus: number,
  pouringTemperature: number,
  contact: Contact,
): number {
  const superheat = pouringTemperature - metal.freezingTemperature;
  const drive = contact.transfer * (metal.freezingTemperature - contact.dieTemperature);
  return (metal.density * modulus * (metal.latentHeat + metal.liquidHeat * superheat)) / drive;
}

/** The two stages of interface-limited freezing [s]: superheat leaving, then latent heat. Exact for a lumped metal. */
export function twoStageFreezingTime(
  metal: OnePoint,
  modulus: number,
  pouringTemperature: number,
  contact: Contact,
): { readonly superheat: number; readonly latent: number; readonly total: number } {
  const perTransfer = (metal.density * modulus) / contact.transfer;
  const drive = metal.freezingTemperature - contact.dieTemperature;
  const superheat =
    perTransfer * metal.liquidHeat * logarithm((pouringTemperature - contact.dieTemperature) / drive);
  const latent = (perTransfer * metal.latentHeat) / drive;
  return { superheat, latent, total: superheat + latent };
}

/**
 * Time [s] for metal of one modulus [m] to go from a temperature [K] to a solid fraction, through the whole freezing
 * range: the two stages with a range instead of one point. Infinity when the die is too hot for it.
 */
export function timeToSolidFraction(
  freezing: Freezing,
  modulus: number,
  temperature: number,
  contact: Contact,
  solidFraction: number,
): number {
  return coolingTime(
    freezing,
    enthalpyOf(freezing, temperature),
    enthalpyAtSolidFraction(freezing, solidFraction),
    contact.transfer / (freezing.density * modulus),
    contact.dieTemperature,
  );
}

/** Ratio of the resistance of the metal to that of the interface, h M/k: under about 0.1 the linear law holds. */
export function biotNumber(transfer: number, modulus: number, conductivity: number): number {
  return (transfer * modulus) / conductivity;
}

/**
 * Power of the modulus that the freezing time follows: 1 when the coat controls, 2 when the metal does.
 * From the skin in series with the coat (skin.ts): d ln t/d ln M = (1 + Bi)/(1 + Bi/2).
 */
export function modulusPower(biot: number): number {
  return (1 + biot) / (1 + biot / 2);
}
