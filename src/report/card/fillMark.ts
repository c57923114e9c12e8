import { type StartLevel, startLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { LENGTH, type PageUnits } from '$src/core/units';
import { standOfPlan } from '../drawing/metalAtRest';
import { isLadledIn } from '../ladledIn';
import { isAtBrink, stopsShort } from '../startLevelWords';
import { fixed } from '../wording';

/** Where the metal stands before the tilt, as the pour begins with it. */
export const startLevelOf = (plan: PourPlan): StartLevel =>
  startLevel(plan.section, plan.volume, plan.tilt.start, standOfPlan(plan));

/**
 * What to fill by, in a few words. A mark is given below the lip only: above it the metal is held back by its skin, or
 * runs into the die while it is ladled, and the same height may be more or less metal.
 */
export function fillWords(plan: PourPlan, units: PageUnits): string {
  const level = startLevelOf(plan);
  if (isLadledIn(level.inDie)) return 'runs into the die at ladling: weigh it, no mark will do';
  if (level.held === null) return 'metal covers the lip at first';
  const short = stopsShort(level, units);
  if (short) return `stops ${short}: weigh it`;
  if (level.held > 0) return 'stands over the lip: weigh it, no mark will do';
  const mark = markDepth(level.held, units);
  const words = mark === null ? 'level with the lip' : `${mark} below the lip`;
  return isAtBrink(level.held) ? `to the brink: ${words}` : words;
}

/** As fine as a hand with a ladle keeps a level: half millimetres, fiftieths of an inch. */
const STEPS = { mm: { step: 0.5, decimals: 1 }, in: { step: 0.02, decimals: 2 } } as const;

/** How far under the lip the mark lies, as a hand keeps it; null where that is nothing. `fromLip` [m] is not above it. */
export function markDepth(fromLip: number, { length }: PageUnits): string | null {
  const { step, decimals } = STEPS[length];
  const depth = Math.round(LENGTH[length].toShown(-fromLip) / step) * step;
  return depth === 0 ? null : `${fixed(depth, decimals).replace(/\.0$/, '')} ${length}`;
}
