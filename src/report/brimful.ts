import type { PourPlan } from '$src/core/pour/plan';
import { startLevelOf } from './card/fillMark';

/** Less room than this under the lip is none to fill further, chosen [m]. */
const LEAST_ROOM = 1.5e-3;

const known = new WeakMap<PourPlan, boolean>();

/** Whether the charge stands at the brink, or over the lip, before the tilt: no fuller basin can be asked for. */
export function isBrimful(plan: PourPlan): boolean {
  const told = known.get(plan) ?? standsAtBrink(plan);
  known.set(plan, told);
  return told;
}

function standsAtBrink(plan: PourPlan): boolean {
  const { held } = startLevelOf(plan);
  return held === null || held > -LEAST_ROOM;
}
