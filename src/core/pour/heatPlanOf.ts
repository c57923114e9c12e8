import { coatTransfer } from '$src/core/heat/coat';
import { COATS } from '$src/core/heat/coats';
import { freezingOf } from '$src/core/heat/freezing';
import { defaultLapTemperature, type HeatPlan } from '$src/core/heat/heatPlan';
import { thermalOf } from '$src/core/heat/thermalMetals';
import type { Metal } from '$src/core/metal/metal';
import type { Region, Section } from '$src/core/section/section';
import { fromCelsius } from '$src/core/units';

/** What a region has that says nothing of its coat or temperature: a normal insulating coat on a die at 350 °C. */
export const DEFAULT_TRANSFER = coatTransfer(COATS.find((coat) => coat.name === 'Normal insulating')!);
export const DEFAULT_DIE_TEMPERATURE = fromCelsius(350);

/**
 * Heat of a pour from its metal and section. The metal starts at its pouring temperature; a metal whose freezing is
 * not known carries no heat (null).
 */
export function heatPlanOf(metal: Metal, section: Section): HeatPlan | null {
  const thermal = thermalOf(metal.base);
  if (!thermal) return null;
  const freezing = freezingOf(thermal, metal.density.value);
  return {
    freezing,
    startTemperature: metal.pouringTemperature.value,
    regions: section.regions.map(heatOfRegion),
    dieSurface: null,
    lapTemperature: defaultLapTemperature(freezing),
  };
}

function heatOfRegion(region: Region) {
  return {
    transfer: region.transfer ?? DEFAULT_TRANSFER,
    dieTemperature: region.dieTemperature ?? DEFAULT_DIE_TEMPERATURE,
    later: null,
  };
}
