import type { Freezing } from './freezing';
import type { ThermalMetal } from './thermal';
import { A356, ALSI12 } from './thermalAluminium';
import { ALUMINIUM_BRONZE, BRASS } from './thermalCopper';
import { AZ91, ZA12 } from './thermalZincMagnesium';

/** The thermal part of every metal a book can start from. */
export const THERMAL_METALS: readonly ThermalMetal[] = [A356, ALSI12, ALUMINIUM_BRONZE, BRASS, ZA12, AZ91];

/** The thermal part of the metal with that `Metal.base`; undefined when there is none. */
export function thermalOf(base: string): ThermalMetal | undefined {
  return THERMAL_METALS.find((thermal) => thermal.base === base);
}

/** The metal whose freezing a plan carries; undefined when its numbers are none of ours. */
export function thermalOfFreezing(freezing: Freezing): ThermalMetal | undefined {
  return THERMAL_METALS.find(
    ({ liquidus, solidus, latentHeat }) =>
      liquidus.value === freezing.liquidus &&
      solidus.value === freezing.solidus &&
      latentHeat.value === freezing.latentHeat,
  );
}
