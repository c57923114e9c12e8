import { type StartLevel, startLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { standOfPlan } from '../drawing/metalAtRest';
import { fromLipWords, isAtBrink, stopsShort } from '../startLevelWords';

/** Where the metal stands before the tilt, as the pour begins with it. */
export const startLevelOf = (plan: PourPlan): StartLevel =>
  startLevel(plan.section, plan.volume, plan.tilt.start, standOfPlan(plan));

/**
 * What to fill by, in a few words. A mark is given below the lip only: above it the metal is held back by its skin, or
 * runs into the die while it is ladled, and the same height may be more or less metal.
 */
export function fillWords(plan: PourPlan, units: PageUnits): string {
  const level = startLevelOf(plan);
  if (level.held === null) return 'metal covers the lip at first';
  const short = stopsShort(level, units);
  if (short) return `stops ${short}: weigh it`;
  if (level.held > 0) return 'stands over the lip: weigh it, no mark will do';
  const words = fromLipWords(level.held, units);
  return isAtBrink(level.held) ? `to the brink: ${words}` : words;
}
