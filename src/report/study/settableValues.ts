import type { PageUnits } from '$src/core/units';
import type { SettingValues } from './planAt';
import { settable } from './settable';
import type { NamedAxis } from './studyFile';

/** The values of a point as a shop can set them. The ends of a range were typed, and stay as they were. */
export function settableValues(
  axes: readonly NamedAxis[],
  values: SettingValues,
  units: PageUnits,
): SettingValues {
  const typed = ({ from, to }: NamedAxis, value: number): boolean => value === from || value === to;
  return Object.fromEntries(
    axes.map((axis) => {
      const value = values[axis.setting]!;
      return [axis.setting, typed(axis, value) ? value : settable(value, axis.quantity, units)];
    }),
  );
}
