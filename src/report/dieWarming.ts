import { type DieCycle, dieLumpOf } from '$src/core/heat/dieCycle';
import {
  cyclesToSettle,
  cycleTimeFor,
  dieTemperatures,
  settledDieTemperature,
} from '$src/core/heat/dieWarming';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { wayBack } from '$src/core/tilt/machine/wayBack';
import { motionOf } from '$src/core/tilt/motionOf';
import { timesAnHour } from '$src/core/units';
import { secondsText, significant } from './wording';

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

/** What the machine itself takes out of a cycle [s]. */
export interface MachineTime {
  readonly tilt: number;
  /** Of a machine tilt, from stop to stop without metal; null when it is not known: other tilts, or none comes back. */
  readonly back: number | null;
  /** For freezing, opening, coat and ladling; below 0 when the machine alone takes longer than the cycle. */
  readonly left: number;
}

/** Tilt and way back against the cycle. */
export function machineTime({ plan, machine, frontLed, series }: PourRecord, cycle: DieCycle): MachineTime {
  const { tilt } = plan;
  const given = tilt.kind === 'front-led' ? frontLed?.tries[frontLed.chosen]?.tilt : tilt;
  const turned = machine?.duration ?? (given ? motionOf(given).duration : series.time.at(-1)!);
  const back = tilt.kind === 'machine' ? wayBack(tilt).time : null;
  return { tilt: turned, back, left: cycle.cycleTime - turned - (back ?? 0) };
}

/** The same in words, with the pours an hour that the cycle makes. */
export function machineTimeSentence(record: PourRecord, cycle: DieCycle): string {
  const { tilt, back, left } = machineTime(record, cycle);
  const anHour = `${significant(timesAnHour(cycle.cycleTime))} pours an hour`;
  const machine = `the tilt takes ${secondsText(tilt)}${back === null ? '' : ` and the way back ${secondsText(back)}`}`;
  if (left <= 0)
    return `That would be ${anHour}, but ${machine}: the machine alone is longer than the cycle.`;
  return `That is ${anHour}: ${machine}, which leaves ${secondsText(left)} for freezing, opening, coat and ladling.`;
}
