import { toCelsius, toDegrees, toMillimetres } from '$src/core/units';
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

const QUANTITIES: Readonly<Record<SettingQuantity, ShownQuantity>> = {
  angle: { unit: '°', key: 'deg', decimals: 1, isSigned: true, toShown: toDegrees },
  'contact angle': { unit: '°', key: 'deg', decimals: 0, isSigned: false, toShown: toDegrees },
  rate: { unit: '°/s', key: 'deg_per_s', decimals: 1, isSigned: false, toShown: toDegrees },
  time: { unit: 's', key: 's', decimals: 1, isSigned: false, toShown: same },
  length: { unit: 'mm', key: 'mm', decimals: 1, isSigned: false, toShown: toMillimetres },
  level: { unit: 'mm', key: 'mm', decimals: 1, isSigned: true, toShown: toMillimetres },
  mass: { unit: 'kg', key: 'kg', decimals: 3, isSigned: false, toShown: same },
  temperature: { unit: '°C', key: 'C', decimals: 0, isSigned: false, toShown: toCelsius },
  'heat transfer': { unit: 'W/m²K', key: 'W_per_m2K', decimals: 0, isSigned: false, toShown: same },
  count: { unit: '', key: '', decimals: 0, isSigned: false, toShown: same },
};

export const shownQuantity = (quantity: SettingQuantity): ShownQuantity => QUANTITIES[quantity];

/** The number alone: "+30.0", "9.2". */
export function shownNumber(value: number, quantity: SettingQuantity): string {
  const { toShown, decimals, isSigned } = QUANTITIES[quantity];
  const text = fixed(toShown(value), decimals).replace(/\.0+$/, '');
  return isSigned && toShown(value) > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** With its unit: "+30°", "9.2 s". */
export function shownValue(value: number, quantity: SettingQuantity): string {
  const { unit } = QUANTITIES[quantity];
  const space = unit === '' || unit === '°' ? '' : ' ';
  return `${shownNumber(value, quantity)}${space}${unit}`;
}

/** A distance between two values, never signed: "20°", "6.9 s". */
export function shownDistance(distance: number, quantity: SettingQuantity): string {
  const { toShown, unit, decimals } = QUANTITIES[quantity];
  const size = Math.abs(toShown(distance) - toShown(0));
  const text = fixed(size, size >= 10 ? Math.min(decimals, 0) : decimals);
  return `${text}${unit === '' || unit === '°' ? '' : ' '}${unit}`;
}
