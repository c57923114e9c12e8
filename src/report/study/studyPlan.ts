import type { PourPlan } from '$src/core/pour/plan';
import type { Study } from './study';

/**
 * The pour that a study varies, computed as the study computes its pours: on the mesh of the study; for a map only
 * until nothing is left to decide, since a slow tilt spends most of its time after that. A curve may show a figure of the end, so its pours run through.
 */
export function studyPlan(plan: PourPlan, { axes, meshCells }: Pick<Study, 'axes' | 'meshCells'>): PourPlan {
  const computation = { ...plan.computation, meshCells };
  return { ...plan, computation: axes.length > 1 ? { ...computation, endsWhenDecided: true } : computation };
}
