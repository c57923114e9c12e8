import { criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import type { Liquid } from '$src/core/metal/liquid';

/**
 * Surface tension of clean over oxidised aluminium, 1.10 over 0.865 N/m: Garcia-Cordovilla, Louis & Pamies, J. Mater.
 * Sci. 21 (1986) 2787, abstract read. Other metals are taken to keep the ratio; that is assumed.
 */
const CLEAN_OVER_OXIDISED = 1.1 / 0.865;

/** What a metal of this base tension is called past the middle of the two [N/m]: the clean value of aluminium is the mark. */
const CLEAN_FROM = 1.1 / Math.sqrt(CLEAN_OVER_OXIDISED);
const ALUMINIUM_BELOW = 3000;

export interface OtherSurface {
  readonly name: 'clean' | 'oxidised';
  readonly liquid: Liquid;
}

/**
 * The same metal with the other surface: clean when it is given as oxidised, oxidised when it is given as clean. The
 * critical speed follows as a fourth root unless it was typed. Tensions of metals heavier than aluminium are all
 * listed for the oxidised surface.
 */
export function otherSurface(liquid: Liquid): OtherSurface {
  const isClean = liquid.density < ALUMINIUM_BELOW && liquid.surfaceTension > CLEAN_FROM;
  const ratio = isClean ? 1 / CLEAN_OVER_OXIDISED : CLEAN_OVER_OXIDISED;
  const surfaceTension = liquid.surfaceTension * ratio;
  const own = criticalSpeedOf(liquid.surfaceTension, liquid.density);
  const isTyped = Math.abs(liquid.criticalSpeed / own - 1) > 1e-6;
  const criticalSpeed = isTyped ? liquid.criticalSpeed : criticalSpeedOf(surfaceTension, liquid.density);
  return {
    name: isClean ? 'oxidised' : 'clean',
    liquid: { ...liquid, surfaceTension, criticalSpeed },
  };
}
