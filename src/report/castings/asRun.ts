import type { PourPlan } from '$src/core/pour/plan';
import { motionOf } from '$src/core/tilt/motionOf';
import { METRIC, type PageUnits } from '$src/core/units';
import { shownMass, shownTemperature, withUnit } from '../measureText';
import { angleText, listText, secondsText } from '../wording';
import type { CastingRow } from './casting';

/** A setting as run strays further from the pour's than a careful crew would let it. Common practice, no source. */
const STRAYS = { angle: 0.035, timeShare: 0.1, massShare: 0.03, temperature: 15 } as const;

/** Where a row was run otherwise than the pour it belongs to, in words; empty when it was not, or nothing was written down. */
export function runOtherwise(row: CastingRow, plan: PourPlan, units: PageUnits = METRIC): string {
  const told = [
    startWords(row, plan),
    timeWords(row, plan),
    massWords(row, plan, units),
    heatWords(row, plan, units),
  ];
  return listText(told.filter((words) => words !== ''));
}

function startWords({ startAngle }: CastingRow, { tilt }: PourPlan): string {
  if (startAngle === null || Math.abs(startAngle - tilt.start) <= STRAYS.angle) return '';
  return `start ${angleText(startAngle)} in place of ${angleText(tilt.start)}`;
}

function timeWords({ tiltTime }: CastingRow, { tilt }: PourPlan): string {
  // A front-led tilt has no time of its own before it has been poured.
  if (tiltTime === null || tilt.kind === 'front-led') return '';
  const { duration } = motionOf(tilt);
  if (Math.abs(tiltTime - duration) <= STRAYS.timeShare * duration) return '';
  return `tilt ${secondsText(tiltTime)} in place of ${secondsText(duration)}`;
}

function massWords({ mass }: CastingRow, { volume, liquid }: PourPlan, units: PageUnits): string {
  const planned = volume * liquid.density;
  if (mass === null || Math.abs(mass - planned) <= STRAYS.massShare * planned) return '';
  const shown = (kilograms: number): string => withUnit(shownMass(kilograms, units));
  return `charge ${shown(mass)} in place of ${shown(planned)}`;
}

function heatWords({ metalTemperature }: CastingRow, { heat }: PourPlan, units: PageUnits): string {
  if (metalTemperature === null || !heat) return '';
  if (Math.abs(metalTemperature - heat.startTemperature) <= STRAYS.temperature) return '';
  const shown = (kelvin: number): string => withUnit(shownTemperature(kelvin, units));
  return `metal ${shown(metalTemperature)} in place of ${shown(heat.startTemperature)}`;
}
