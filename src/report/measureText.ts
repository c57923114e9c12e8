import { LENGTH, MASS, type PageUnits, SPEED, TEMPERATURE, VOLUME } from '$src/core/units';
import { fixed, significant } from './wording';

/** A measure in the page's units, number and unit apart so that the unit can be set small. */
export interface Shown {
  readonly number: string;
  readonly unit: string;
}

/** A length [m] to two or three figures. */
export function shownLength(length: number, { length: unit }: PageUnits): Shown {
  const value = LENGTH[unit].toShown(length);
  return { number: unit === 'mm' ? significant(value) : inchText(value), unit };
}

/** Hundredths of an inch below ten inches, tenths from there up; thousandths below a tenth of an inch. */
function inchText(inches: number): string {
  const size = Math.abs(inches);
  if (size === 0) return '0';
  return fixed(inches, size < 0.1 ? 3 : size < 10 ? 2 : 1);
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
