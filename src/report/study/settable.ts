import {
  fromDegrees,
  HEAT_TRANSFER,
  LENGTH,
  MASS,
  type Measure,
  type PageUnits,
  TEMPERATURE,
  toDegrees,
} from '$src/core/units';
import type { SettingQuantity } from './setting';

/** How fine a shop sets something, as decimals of the unit it is shown in. */
interface Fineness extends Pick<Measure, 'toShown' | 'fromShown'> {
  readonly decimals: number;
}

const same = (value: number): number => value;
const degrees = { toShown: toDegrees, fromShown: fromDegrees };
const plain = { toShown: same, fromShown: same };

/** A charge lighter than this is weighed a digit finer [kg]. */
const LIGHT = 0.1;

function finenessOf(quantity: SettingQuantity, units: PageUnits, value: number): Fineness {
  switch (quantity) {
    case 'length':
    case 'level':
      return { ...LENGTH[units.length], decimals: units.length === 'mm' ? 1 : 3 };
    case 'mass':
      return { ...MASS[units.mass], decimals: value < LIGHT ? 4 : 3 };
    case 'temperature':
      return { ...TEMPERATURE[units.temperature], decimals: 0 };
    case 'angle':
    case 'rate':
      return { ...degrees, decimals: 1 };
    case 'contact angle':
      return { ...degrees, decimals: 0 };
    case 'time':
    case 'turns':
      return { ...plain, decimals: 2 };
    case 'share':
      return { ...plain, decimals: 2 };
    case 'heat transfer':
      return { ...HEAT_TRANSFER[units.length], decimals: 0 };
    case 'count':
      return { ...plain, decimals: 0 };
  }
}

/**
 * A derived value as a shop can set it, in the units of the page: tenths of a millimetre or thousandths of an inch, grams or
 * thousandths of a pound, tenths of a degree. For what a page works out and hands over, never for what somebody typed.
 */
export function settable(value: number, quantity: SettingQuantity, units: PageUnits): number {
  const { toShown, fromShown, decimals } = finenessOf(quantity, units, value);
  const shown = Number(toShown(value).toFixed(decimals));
  return shown === 0 ? fromShown(0) : fromShown(shown);
}
