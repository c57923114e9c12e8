import { criticalSpeed } from './criticalSpeed';
import type { Liquid } from './liquid';
import type { Metal } from './metal';

/** The metal as the flow sees it: bare numbers in SI, sources left behind. */
export function liquidOf(metal: Metal): Liquid {
  return {
    density: metal.density.value,
    viscosity: metal.viscosity.value,
    surfaceTension: metal.surfaceTension.value,
    contactAngle: metal.contactAngle.value,
    criticalSpeed: criticalSpeed(metal),
  };
}
