import { HEAT_TRANSFER, LENGTH, MASS, METRIC, type PageUnits, TEMPERATURE, toDegrees } from '$src/core/units';
import { fixed } from '../wording';
import type { SettingQuantity } from './setting';

/** How a setting is shown and written to files. */
export interface ShownQuantity {
  readonly unit: string;
  /** Unit as part of a name in a file, e.g. `start_angle_deg`. */
  readonly key: string;
  readonly decimals: number;
  readonly isSigned: boolean;
  readonly toShown: (si: number) => number;
}

const same = (value: number): number => value;

type Measured = 'length' | 'level' | 'mass' | 'temperature' | 'heat transfer';

const OTHERS: Readonly<Record<Exclude<SettingQuantity, Measured>, ShownQuantity>> = {
  angle: { unit: '°', key: 'deg', decimals: 1, isSigned: true, toShown: toDegrees },
  'contact angle': { unit: '°', key: 'deg', decimals: 0, isSigned: false, toShown: toDegrees },
  rate: { unit: '°/s', key: 'deg_per_s', decimals: 1, isSigned: false, toShown: toDegrees },
  time: { unit: 's', key: 's', decimals: 1, isSigned: false, toShown: same },
  share: { unit: '%', key: 'percent', decimals: 0, isSigned: false, toShown: (share) => share * 100 },
  turns: { unit: 'turns', key: 'turns', decimals: 2, isSigned: false, toShown: same },
  count: { unit: '', key: '', decimals: 0, isSigned: false, toShown: same },
};

/** How a setting is shown, in the units of the page. */
export function shownQuantity(quantity: SettingQuantity, units: PageUnits = METRIC): ShownQuantity {
  switch (quantity) {
    case 'length':
    case 'level': {
      const decimals = units.length === 'mm' ? 1 : 3;
      return { ...LENGTH[units.length], decimals, isSigned: quantity === 'level' };
    }
    case 'mass':
      return { ...MASS[units.mass], decimals: 3, isSigned: false };
    case 'heat transfer':
      return { ...HEAT_TRANSFER[units.length], decimals: 0, isSigned: false };
    case 'temperature':
      return { ...TEMPERATURE[units.temperature], decimals: 0, isSigned: false };
    default:
      return OTHERS[quantity];
  }
}

/** The number alone: "+30.0", "9.2". */
export function shownNumber(value: number, quantity: SettingQuantity, units: PageUnits = METRIC): string {
  const { toShown, decimals, isSigned } = shownQuantity(quantity, units);
  const text = fixed(toShown(value), decimals).replace(/\.0+$/, '');
  return isSigned && toShown(value) > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** With its unit: "+30°", "9.2 s". */
export function shownValue(value: number, quantity: SettingQuantity, units: PageUnits = METRIC): string {
  const { unit } = shownQuantity(quantity, units);
  const space = unit === '' || unit === '°' ? '' : ' ';
  return `${shownNumber(value, quantity, units)}${space}${unit}`;
}

/** Rounding errors of a conversion are no reason to round a whole step further. */
const SLACK = 1e-6;

/** The value rounded upwards (1) or downwards (-1), with its unit: an end of a range never stands outside it. */
export function shownWithin(
  value: number,
  upwards: -1 | 1,
  quantity: SettingQuantity,
  units: PageUnits = METRIC,
): { readonly number: number; readonly text: string } {
  const { toShown, decimals, unit, isSigned } = shownQuantity(quantity, units);
  const scaled = toShown(value) * 10 ** decimals;
  const whole = upwards > 0 ? Math.ceil(scaled - SLACK) : Math.floor(scaled + SLACK);
  const number = whole / 10 ** decimals;
  const text = fixed(number, decimals).replace(/\.0+$/, '');
  const sign = isSigned && number > 0 ? '+' : '';
  return { number, text: `${sign}${text}${unit === '' || unit === '°' ? '' : ' '}${unit}` };
}

/** A distance between two values, never signed: "20°", "6.9 s". */
export function shownDistance(
  distance: number,
  quantity: SettingQuantity,
  units: PageUnits = METRIC,
): string {
  const { toShown, unit, decimals } = shownQuantity(quantity, units);
  const size = Math.abs(toShown(distance) - toShown(0));
  const text = fixed(size, size >= 10 ? Math.min(decimals, 0) : decimals);
  return `${text}${unit === '' || unit === '°' ? '' : ' '}${unit}`;
}
