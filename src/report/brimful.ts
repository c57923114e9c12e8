import type { PourPlan } from '$src/core/pour/plan';
import { startLevelOf } from './card/fillMark';
import { isAtBrink } from './startLevelWords';

const known = new WeakMap<PourPlan, boolean>();

/** Whether the charge stands at the brink, or over the lip, before the tilt: no fuller basin can be asked for. */
export function isBrimful(plan: PourPlan): boolean {
  const told = known.get(plan) ?? standsAtBrink(plan);
  known.set(plan, told);
  return told;
}

function standsAtBrink(plan: PourPlan): boolean {
  const { held } = startLevelOf(plan);
  return held === null || held > 0 || isAtBrink(held);
}
