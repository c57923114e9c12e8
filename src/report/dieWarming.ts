import { type DieCycle, dieLumpOf } from '$src/core/heat/dieCycle';
import {
  cyclesToSettle,
  cycleTimeFor,
  dieTemperatures,
  settledDieTemperature,
} from '$src/core/heat/dieWarming';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import type { PourPlan } from '$src/core/pour/plan';

/** How a die warms when it is poured again and again. Temperatures [K], at the start of a cycle. */
export interface DieWarming {
  /** Die temperature the pour was computed with, mean over the regions. */
  readonly set: number;
  /** From the set temperature on, one a cycle. */
  readonly temperatures: readonly number[];
  readonly settled: number;
  /** Cycles until a twentieth of the way is left. */
  readonly cycles: number;
  /** Cycle that would keep the die at the set temperature [s]; null when none can. */
  readonly cycleToKeep: number | null;
}

const NEARLY = 0.05;
const MOST_SHOWN = 40;

/** @param cycle checked by `checkDieCycle`; null when heat was not computed */
export function dieWarming(plan: PourPlan, cycle: DieCycle): DieWarming | null {
  const { heat, volume, liquid } = plan;
  if (!heat) return null;
  const die = dieLumpOf(cycle);
  const shot = {
    metal: volume * liquid.density,
    pouringTemperature: heat.startTemperature,
    ejectionTemperature: cycle.ejectionTemperature,
    cycleTime: cycle.cycleTime,
  };
  const set = meanDie(heat);
  const cycles = cyclesToSettle(die, shot, NEARLY);
  return {
    set,
    temperatures: dieTemperatures(die, heat.freezing, shot, set, Math.min(cycles + 1, MOST_SHOWN)),
    settled: settledDieTemperature(die, heat.freezing, shot),
    cycles,
    cycleToKeep: cycleTimeFor(die, heat.freezing, shot, set),
  };
}

const meanDie = ({ regions }: HeatPlan): number =>
  regions.reduce((sum, region) => sum + region.dieTemperature, 0) / regions.length;
