import { LENGTH, MASS, type PageUnits, SPEED, TEMPERATURE, VOLUME } from '$src/core/units';
import { fixed, MINUS, significant } from './wording';

/** A measure in the page's units, number and unit apart so that the unit can be set small. */
export interface Shown {
  readonly number: string;
  readonly unit: string;
}

/** A length [m] as a rule or a dipstick in a shop tells it: never finer than a tenth of a millimetre or a thousandth of an inch. */
export function shownLength(length: number, { length: unit }: PageUnits): Shown {
  const value = LENGTH[unit].toShown(length);
  return { number: unit === 'mm' ? millimetreText(value) : inchText(value), unit };
}

/** Tenths below ten millimetres, whole ones from there up. */
function millimetreText(millimetres: number): string {
  const size = Math.abs(millimetres);
  return size < 0.95 ? smallText(millimetres, 1) : significant(millimetres);
}

/** What would round to nought is told by what it lies under; a level in its last digit is on neither side of a mark. */
function smallText(value: number, decimals: number): string {
  if (Math.abs(value) < NOTHING) return '0';
  const text = fixed(value, decimals);
  return Number(text.replace(MINUS, '-')) === 0 ? `under ${(10 ** -decimals).toFixed(decimals)}` : text;
}

/** A rounding of the level fill [shown unit]. */
const NOTHING = 1e-6;

/** Hundredths of an inch below ten inches, tenths from there up; thousandths below a tenth of an inch. */
function inchText(inches: number): string {
  const size = Math.abs(inches);
  return size < 0.1 ? smallText(inches, 3) : fixed(inches, size < 10 ? 2 : 1);
}

/** A speed [m/s]: hundredths of a metre, tenths of an inch. */
export function shownSpeed(speed: number, { length }: PageUnits): Shown {
  const measure = SPEED[length];
  return { number: fixed(measure.toShown(speed), length === 'mm' ? 2 : 1), unit: measure.unit };
}

/** A mass [kg] to what a ladle can do. */
export function shownMass(mass: number, { mass: unit }: PageUnits): Shown {
  const value = MASS[unit].toShown(mass);
  return { number: fixed(value, value < 10 ? 2 : 1), unit };
}

/** A temperature [K], whole degrees. */
export function shownTemperature(temperature: number, { temperature: unit }: PageUnits): Shown {
  const measure = TEMPERATURE[unit];
  return { number: fixed(measure.toShown(temperature), 0), unit: measure.unit };
}

/** A volume [m³]: whole cubic centimetres, tenths of a cubic inch. */
export function shownVolume(volume: number, { length }: PageUnits): Shown {
  const measure = VOLUME[length];
  return { number: fixed(measure.toShown(volume), length === 'mm' ? 0 : 1), unit: measure.unit };
}

/** Number and unit with a space between them. */
export const withUnit = ({ number, unit }: Shown): string => `${number} ${unit}`;
