import type { PourPlan } from '$src/core/pour/plan';
import { settingNamed } from './settings';
import type { StudyAxis } from './study';
import type { NamedAxis } from './studyFile';

/** The axes with names, quantities and what the pour is set to. All must be settings of the pour. */
export function namedAxes(axes: readonly StudyAxis[], plan: PourPlan): NamedAxis[] {
  return axes.map((axis) => {
    const { name, quantity, read } = settingNamed(plan, axis.setting)!;
    return { ...axis, name, quantity, setPoint: read(plan) };
  });
}
