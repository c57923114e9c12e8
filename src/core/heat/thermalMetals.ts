import type { Metal } from '$src/core/metal/metal';
import type { ThermalMetal } from '$src/core/metal/thermal';
import type { Freezing } from './freezing';
import type { HeatPlan, SetMetal } from './heatPlan';
import { A356, ALSI12 } from './thermalAluminium';
import { ALUMINIUM_BRONZE, BRASS } from './thermalCopper';
import { AZ91, ZA12 } from './thermalZincMagnesium';

/** The thermal part of every metal a book can start from. */
export const THERMAL_METALS: readonly ThermalMetal[] = [A356, ALSI12, ALUMINIUM_BRONZE, BRASS, ZA12, AZ91];

/** The thermal part of the metal with that `Metal.base`, as the book knows it; undefined when there is none. */
export function thermalOf(base: string): ThermalMetal | undefined {
  return THERMAL_METALS.find((thermal) => thermal.base === base);
}

/** What a metal is to heat: its user's own values, and those of its base for the rest; undefined when that has none. */
export function thermalOfMetal({ base, thermal: own }: Metal): ThermalMetal | undefined {
  const thermal = thermalOf(base);
  return thermal && { ...thermal, ...own };
}

/** The user's own of these change what is told of a pour; his freezing data make its metal none of ours. */
const TOLD = [
  'liquidus',
  'solidus',
  'latentHeat',
  'solidConductivity',
  'freezingShrinkage',
  'pouringRange',
  'dieRange',
] as const;

/** What a plan has to carry of a metal that has values of its user's own; null where its freezing names its base. */
export function ownSetMetal(metal: Metal): SetMetal | null {
  const thermal = thermalOfMetal(metal);
  return thermal && TOLD.some((field) => metal.thermal?.[field]) ? bareOf(thermal) : null;
}

/** What the metal of a plan is once the die is full; undefined when its numbers are none of ours. */
export function setMetalOf({ own, freezing }: HeatPlan): SetMetal | undefined {
  if (own) return own;
  const thermal = thermalOfFreezing(freezing);
  return thermal && bareOf(thermal);
}

const bareOf = ({
  base,
  solidConductivity,
  freezingShrinkage,
  pouringRange: pouring,
  dieRange: die,
}: ThermalMetal): SetMetal => ({
  base,
  solidConductivity: solidConductivity.value,
  freezingShrinkage: freezingShrinkage.value,
  pouringRange: { low: pouring.low, high: pouring.high },
  dieRange: { low: die.low, high: die.high },
});

function thermalOfFreezing(freezing: Freezing): ThermalMetal | undefined {
  return THERMAL_METALS.find(
    ({ liquidus, solidus, latentHeat }) =>
      liquidus.value === freezing.liquidus &&
      solidus.value === freezing.solidus &&
      latentHeat.value === freezing.latentHeat,
  );
}
