import type { PourPlan } from '$src/core/pour/plan';
import { motionOf } from '$src/core/tilt/motionOf';
import { toCelsius } from '$src/core/units';
import { angleText, fixed, listText, secondsText } from '../wording';
import type { CastingRow } from './casting';

/** A setting as run strays further from the pour's than a careful crew would let it. Common practice, no source. */
const STRAYS = { angle: 0.035, timeShare: 0.1, massShare: 0.03, temperature: 15 } as const;

/** Where a row was run otherwise than the pour it belongs to, in words; empty when it was not, or nothing was written down. */
export function runOtherwise(row: CastingRow, plan: PourPlan): string {
  const told = [startWords(row, plan), timeWords(row, plan), massWords(row, plan), heatWords(row, plan)];
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

function massWords({ mass }: CastingRow, { volume, liquid }: PourPlan): string {
  const planned = volume * liquid.density;
  if (mass === null || Math.abs(mass - planned) <= STRAYS.massShare * planned) return '';
  return `charge ${fixed(mass, 2)} kg in place of ${fixed(planned, 2)} kg`;
}

function heatWords({ metalTemperature }: CastingRow, { heat }: PourPlan): string {
  if (metalTemperature === null || !heat) return '';
  if (Math.abs(metalTemperature - heat.startTemperature) <= STRAYS.temperature) return '';
  const celsius = (kelvin: number): string => `${fixed(toCelsius(kelvin), 0)} °C`;
  return `metal ${celsius(metalTemperature)} in place of ${celsius(heat.startTemperature)}`;
}
