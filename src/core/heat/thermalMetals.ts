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
export function thermalOfMetal({ base, thermal: own = {} }: Metal): ThermalMetal | undefined {
  const thermal = thermalOf(base);
  const typed = Object.entries(own).map(([field, one]) => [
    field,
    'value' in one ? one.value : { low: one.low, high: one.high },
  ]);
  return thermal && { ...thermal, ...Object.fromEntries(typed) };
}

/** The user's own of these change what is told of a pour, or make its metal none of the book's. */
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
  return thermal && TOLD.some((field) => metal.thermal?.[field]) ? setOf(thermal) : null;
}

/** What the metal of a plan is once the die is full; undefined when its numbers are none of ours. */
export const setMetalOf = ({ own, freezing }: HeatPlan): SetMetal | undefined =>
  own ?? thermalOfFreezing(freezing);

const setOf = ({
  base,
  solidConductivity,
  freezingShrinkage,
  pouringRange,
  dieRange,
}: ThermalMetal): SetMetal => ({ base, solidConductivity, freezingShrinkage, pouringRange, dieRange });

const thermalOfFreezing = (freezing: Freezing): ThermalMetal | undefined =>
  THERMAL_METALS.find((thermal) =>
    (['liquidus', 'solidus', 'latentHeat'] as const).every((field) => thermal[field] === freezing[field]),
  );
