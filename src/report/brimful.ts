import { startLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { standOfPlan } from './drawing/metalAtRest';

/** Nearer to the lip than this nobody ladles to a mark; common practice, no source [m]. */
const TO_THE_BRINK = 0.0015;

const known = new WeakMap<PourPlan, boolean>();

/** Whether the charge stands at the brink, or over the lip, before the tilt: no fuller basin can be asked for. */
export function isBrimful(plan: PourPlan): boolean {
  const told = known.get(plan) ?? standsAtBrink(plan);
  known.set(plan, told);
  return told;
}

function standsAtBrink(plan: PourPlan): boolean {
  const { held } = startLevel(plan.section, plan.volume, plan.tilt.start, standOfPlan(plan));
  return held === null || held >= -TO_THE_BRINK;
}
