import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { standOfPlan } from '../drawing/metalAtRest';
import { shownLength, withUnit } from '../measureText';

/** Where the metal stands before the tilt, from the lip [m]; null where it covers it at first. */
export const levelFromLip = (plan: PourPlan): number | null =>
  fillLevelFromVolume(plan.section, plan.tilt.start, plan.volume, standOfPlan(plan));

/**
 * What to fill by, in a few words. A mark is given below the lip only: above it the metal is held back by its skin, or
 * runs into the die while it is ladled, and the same height may be more or less metal.
 */
export function fillWords(plan: PourPlan, units: PageUnits): string {
  const fromLip = levelFromLip(plan);
  if (fromLip === null) return 'metal covers the lip at first';
  if (fromLip > 0) return 'stands over the lip: weigh it, no mark will do';
  return `${withUnit(shownLength(-fromLip, units))} below the lip`;
}
