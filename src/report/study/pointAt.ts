import { levelPath } from '$src/core/level/levelPath';
import type { PourPlan } from '$src/core/pour/plan';
import { standOfPlan } from '../drawing/metalAtRest';
import { isLadledIn } from '../ladledIn';
import { percentText } from '../wording';
import { type PlanAt, planAt, type SettingValues } from './planAt';

/**
 * The pour to run at a point of a study. On a map, which only tells regions, a pour whose die the ladle has filled in part
 * is known before it is run: it is not judged, whatever comes after. A curve shows figures of the end, so it runs all.
 * @throws RangeError when a setting is none of this pour's
 */
export function pointAt(base: PourPlan, values: SettingValues): PlanAt {
  const at = planAt(base, values);
  if ('refused' in at || !at.plan.computation.endsWhenDecided) return at;
  const share = ladledShare(at.plan);
  if (!isLadledIn(share)) return at;
  const reason = `The ladle fills ${percentText(share)} of the die before the tilt begins; what its metal did there is not computed.`;
  return { refused: { by: 'ladle', reason } };
}

/** Share of the die that is full once the basin is, before anything turns. */
function ladledShare(plan: PourPlan): number {
  const { section, volume, tilt } = plan;
  return levelPath(section, volume, tilt.start, tilt.start, standOfPlan(plan)).share[0]!;
}
