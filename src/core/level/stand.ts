import { cosine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';

/** What the capillary stand of a front needs to know of the metal. */
export interface Stand {
  /** γ (1 − cos θ)/ρ [m³/s²]: what an open front resists with. */
  readonly sigma: number;
  /** 2 γ |cos θ|/ρ [m³/s²] for θ > 90°, else 0: what a front that stands between floor and roof resists with. */
  readonly slotSigma: number;
}

/** The part of a liquid that matters here: density [kg/m³], surface tension [N/m], contact angle [rad]. */
export interface StandingLiquid {
  readonly density: number;
  readonly surfaceTension: number;
  readonly contactAngle: number;
}

/** The stand of a liquid on the coated die. */
export function standOf({ density, surfaceTension, contactAngle }: StandingLiquid): Stand {
  return {
    sigma: (surfaceTension * (1 - cosine(contactAngle))) / density,
    slotSigma: (2 * surfaceTension * Math.max(0, -cosine(contactAngle))) / density,
  };
}

/**
 * How far the level must stand above the floor at a front before the front moves on [m, lab elevation].
 *
 * An open front needs the depth √(2σ/(g cos φ)) square to the axis. Where floor and roof are closer than that, the
 * front first fills the height between them, and the mean head over that height must beat the slot head
 * σ_slot/(g height). The two laws meet without a jump. Derived from the force balance over the front's height.
 *
 * @param height between floor and roof, square to the axis [m]; Infinity under the open air
 * @param cos of the inclination, > 0
 */
export function standRaise(stand: Stand, height: number, cos: number): number {
  const openDepth = openStandDepth(stand, cos);
  if (height >= openDepth) return openDepth * cos;
  return Math.max(height * cos, stand.slotSigma / (GRAVITY * height) + (height * cos) / 2);
}

/** Depth of an open front, square to the axis [m]. */
export function openStandDepth(stand: Stand, cos: number): number {
  return Math.sqrt((2 * stand.sigma) / (GRAVITY * cos));
}

/** Height below which a front that fills it needs more head than just to touch the roof [m]. */
export function slotStandHeight(stand: Stand, cos: number): number {
  return Math.sqrt((2 * stand.slotSigma) / (GRAVITY * cos));
}
