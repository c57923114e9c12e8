import { cosine } from '$src/core/elementary/sine';
import type { Contact, OnePoint } from './freezingTime';

/** Cross-section area over cooled perimeter [m]: a wide channel of full thickness s has s/2. */
export const plateModulus = (thickness: number): number => thickness / 2;
/** A round bar of radius a has a/2. */
export const roundBarModulus = (radius: number): number => radius / 2;

/**
 * How long a front can run before its tip has frozen to the fraction at which it stops [s]:
 * t = ρ (A/P) (f L + c ΔT)/(h (T_m − T_die)).
 * Source: Flemings, Solidification Processing, 1974 (from memory). Die heating is left out: coated hot die.
 */
export function runningTime(
  metal: OnePoint,
  modulus: number,
  superheat: number,
  solidFraction: number,
  contact: Contact,
): number {
  const heat = solidFraction * metal.latentHeat + metal.liquidHeat * superheat;
  const drive = contact.transfer * (metal.freezingTemperature - contact.dieTemperature);
  return (metal.density * modulus * heat) / drive;
}

/** How far it gets at that speed [m]. */
export function fluidityLength(speed: number, time: number): number {
  return speed * time;
}

/** Head below which a slot of that thickness does not fill at all [m]: 2 γ |cos θ|/(ρ g s), 0 for metal that wets. */
export function slotHead(
  surfaceTension: number,
  contactAngle: number,
  density: number,
  gravity: number,
  thickness: number,
): number {
  return (2 * surfaceTension * Math.max(0, -cosine(contactAngle))) / (density * gravity * thickness);
}
