import { METRIC, type PageUnits } from '$src/core/units';
import type { SettingValues } from './planAt';
import { shownNumber, shownValue } from './quantities';
import type { NamedAxis } from './studyFile';

/** What a pour opened from a point is called, by what differs there: "11 mm under", "1.4 kg, 5 °/s". */
export const pointName = (
  axes: readonly NamedAxis[],
  values: SettingValues,
  units: PageUnits = METRIC,
): string => axes.map((axis) => settingName(axis, values[axis.setting]!, units)).join(', ');

/** A name has no need of noughts: "1.400 kg" is "1.4 kg". */
const shortened = (text: string): string =>
  text.replace(/(\.\d*?)0+(?=\D|$)/, '$1').replace(/\.(?=\D|$)/, '');

function settingName({ name, quantity }: NamedAxis, value: number, units: PageUnits): string {
  if (quantity === 'level') {
    const level = shortened(shownValue(Math.abs(value), 'length', units));
    if (Number(shownNumber(Math.abs(value), 'length', units)) === 0) return 'at the lip';
    return `${level} ${value < 0 ? 'under' : 'over'}`;
  }
  const shown = shortened(shownValue(value, quantity, units));
  // A bare number names nothing.
  return quantity === 'count' ? `${name} ${shown}` : shown;
}
