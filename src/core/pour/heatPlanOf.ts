import { coatTransfer } from '$src/core/heat/coat';
import { COATS } from '$src/core/heat/coats';
import { freezingOf } from '$src/core/heat/freezing';
import { defaultLapTemperature, type HeatPlan } from '$src/core/heat/heatPlan';
import { ownSetMetal, thermalOfMetal } from '$src/core/heat/thermalMetals';
import type { Metal } from '$src/core/metal/metal';
import type { Region, Section } from '$src/core/section/section';
import { fromCelsius, toCelsius } from '$src/core/units';

/** What a region has that says nothing of its coat: a normal insulating one. */
export const DEFAULT_TRANSFER = coatTransfer(COATS.find((coat) => coat.name === 'Normal insulating')!);
/** Die temperature where nothing is known of the metal. */
export const DEFAULT_DIE_TEMPERATURE = fromCelsius(350);
/** Nobody sets a die finer than this [K]. */
const DIE_STEP = 10;

/**
 * Die temperature of a region that says nothing of it [K]: the middle of what is usual for the metal, to ten degrees
 * Celsius where that stays within it. 350 °C for A356.
 */
export function usualDieTemperature(metal: Metal): number {
  const range = thermalOfMetal(metal)?.dieRange;
  if (!range) return DEFAULT_DIE_TEMPERATURE;
  const middle = (range.low + range.high) / 2;
  const rounded = fromCelsius(Math.round(toCelsius(middle) / DIE_STEP) * DIE_STEP);
  return rounded >= range.low && rounded <= range.high ? rounded : middle;
}

/**
 * Heat of a pour from its metal and section. The metal starts at its pouring temperature; a metal whose freezing is
 * not known carries no heat (null).
 */
export function heatPlanOf(metal: Metal, section: Section): HeatPlan | null {
  const thermal = thermalOfMetal(metal);
  if (!thermal) return null;
  const freezing = freezingOf(thermal, metal.density.value);
  const usualDie = usualDieTemperature(metal);
  const own = ownSetMetal(metal);
  return {
    freezing,
    startTemperature: metal.pouringTemperature.value,
    regions: section.regions.map((region) => heatOfRegion(region, usualDie)),
    dieSurface: null,
    lapTemperature: defaultLapTemperature(freezing),
    ...(own && { own }),
  };
}

function heatOfRegion(region: Region, usualDie: number) {
  return {
    transfer: region.transfer ?? DEFAULT_TRANSFER,
    dieTemperature: region.dieTemperature ?? usualDie,
    later: null,
  };
}
