import type { Issue } from '$src/core/issue';
import { toCelsius } from '$src/core/units';
import type { HeatPlan, RegionHeat } from './heatPlan';

/** Widest heat transfer that means anything here [W/(m² K)]: bare copper chills reach some 20 000. */
const TRANSFER = { low: 1, high: 50_000 };
/** Coldest die [K]: 0 °C. */
const COLDEST = 273;

/** What is wrong with the heat of a pour; paths are relative to the heat plan. Empty when nothing is. */
export function checkHeat(plan: HeatPlan): Issue[] {
  return [...checkRange(plan), ...plan.regions.flatMap((region, k) => checkRegion(region, k, plan))];
}

function checkRange({ freezing, startTemperature }: HeatPlan): Issue[] {
  const issues: Issue[] = [];
  if (!(freezing.solidus <= freezing.liquidus))
    issues.push({
      path: 'freezing.solidus',
      message: `The solidus (${celsius(freezing.solidus)}) lies above the liquidus (${celsius(freezing.liquidus)}).`,
      remedy: 'Swap them, or type one temperature for both.',
    });
  for (const field of ['density', 'latentHeat', 'liquidHeat', 'solidHeat'] as const)
    if (!(freezing[field] > 0 && Number.isFinite(freezing[field])))
      issues.push({
        path: `freezing.${field}`,
        message: 'This property must be a number above 0.',
        remedy: 'Type a number above 0.',
      });
  if (!(freezing.coherency > 0 && freezing.coherency <= 1))
    issues.push({
      path: 'freezing.coherency',
      message: 'The solid fraction at which a front stops is out of range.',
      remedy: 'Give more than 0 and at most 1; about 0.25 for long freezing ranges, 0.9 for eutectics.',
    });
  if (!(startTemperature > freezing.liquidus))
    issues.push({
      path: 'startTemperature',
      message: `The metal is already freezing when the tilt begins (liquidus ${celsius(freezing.liquidus)}).`,
      remedy: 'Pour hotter, wait less, or insulate the basin.',
    });
  return issues;
}

function checkRegion(region: RegionHeat, k: number, plan: HeatPlan): Issue[] {
  const path = `regions.${k}`;
  const issues: Issue[] = [];
  for (const [field, value] of [
    ['transfer', region.transfer],
    ['later.transfer', region.later?.transfer ?? region.transfer],
  ] as const)
    if (!(value >= TRANSFER.low && value <= TRANSFER.high))
      issues.push({
        path: `${path}.${field}`,
        message: 'This heat transfer is out of range.',
        remedy: `Give ${TRANSFER.low} to ${TRANSFER.high} W/m²K; 1000 to 3000 is usual under a coat.`,
      });
  if (!(region.dieTemperature >= COLDEST && region.dieTemperature < plan.freezing.solidus))
    issues.push({
      path: `${path}.dieTemperature`,
      message: `A die at ${celsius(region.dieTemperature)} cannot freeze this metal, or is colder than ice.`,
      remedy: `Give 0 °C to below the solidus, ${celsius(plan.freezing.solidus)}.`,
    });
  return issues;
}

const celsius = (kelvins: number): string => `${toCelsius(kelvins).toFixed(0)} °C`;
