/**
 * The only place where units are converted. Inside, everything is SI and radians:
 * metres, seconds, kilograms, kelvins. The page, the command line and files for people
 * convert here, at the border.
 */

const DEGREES_PER_RADIAN = 180 / Math.PI;
const MILLIMETRES_PER_METRE = 1000;
/** International inch, exact by definition (1959 agreement). */
const METRES_PER_INCH = 0.0254;
/** Avoirdupois pound, exact by definition (1959 agreement). */
const KILOGRAMS_PER_POUND = 0.45359237;
const CELSIUS_ZERO = 273.15;

export const toDegrees = (radians: number): number => radians * DEGREES_PER_RADIAN;
export const fromDegrees = (degrees: number): number => degrees / DEGREES_PER_RADIAN;
export const toMillimetres = (metres: number): number => metres * MILLIMETRES_PER_METRE;
export const fromMillimetres = (millimetres: number): number => millimetres / MILLIMETRES_PER_METRE;
export const toInches = (metres: number): number => metres / METRES_PER_INCH;
export const fromInches = (inches: number): number => inches * METRES_PER_INCH;
export const toPounds = (kilograms: number): number => kilograms / KILOGRAMS_PER_POUND;
export const fromPounds = (pounds: number): number => pounds * KILOGRAMS_PER_POUND;
export const toCelsius = (kelvins: number): number => kelvins - CELSIUS_ZERO;
export const fromCelsius = (celsius: number): number => celsius + CELSIUS_ZERO;
export const toFahrenheit = (kelvins: number): number => (toCelsius(kelvins) * 9) / 5 + 32;
export const fromFahrenheit = (fahrenheit: number): number => fromCelsius(((fahrenheit - 32) * 5) / 9);
/** Cubic metres to cubic centimetres. */
export const toCubicCentimetres = (cubicMetres: number): number =>
  (cubicMetres * MILLIMETRES_PER_METRE ** 3) / 1000;
/** Square metres to square millimetres. */
export const toSquareMillimetres = (squareMetres: number): number =>
  squareMetres * MILLIMETRES_PER_METRE ** 2;
export const fromSquareMillimetres = (squareMillimetres: number): number =>
  squareMillimetres / MILLIMETRES_PER_METRE ** 2;
/** Viscosity, pascal seconds to millipascal seconds. */
export const toMillipascalSeconds = (pascalSeconds: number): number => pascalSeconds * 1000;
export const fromMilliseconds = (milliseconds: number): number => milliseconds / 1000;
