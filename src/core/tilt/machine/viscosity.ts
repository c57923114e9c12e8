import { exponential, logarithm } from '$src/core/elementary/exponential';
import { fromCentistokes, toCentistokes } from '$src/core/units';

/** Two points of a liquid's viscosity [m²/s] at 40 °C and at 100 °C. */
export interface TwoPoints {
  readonly at40: number;
  readonly at100: number;
}

export type D341Form = 'short' | 'full';

const FORTY = 313.15;
const HUNDRED = 373.15;

/**
 * Kinematic viscosity [m²/s] at a temperature [K] from two points: log log Z = A − B log T, ASTM D341.
 * The short form, Z = ν + 0.7 with ν in cSt, holds from 2 cSt up; the full form goes down to 0.21 cSt, and gives
 * back its own two points to 0.02 %, because its inverse is itself a fit.
 */
export function viscosityAt(points: TwoPoints, temperature: number, form: D341Form = 'short'): number {
  const upper = doubleLog(zOf(toCentistokes(points.at40), form));
  const lower = doubleLog(zOf(toCentistokes(points.at100), form));
  const slope = (upper - lower) / (logarithmOfTen(HUNDRED) - logarithmOfTen(FORTY));
  const constant = upper + slope * logarithmOfTen(FORTY);
  const z = powerOfTen(powerOfTen(constant - slope * logarithmOfTen(temperature)));
  return fromCentistokes(viscosityOf(z, form));
}

const logarithmOfTen = (x: number): number => logarithm(x) / Math.LN10;
const powerOfTen = (x: number): number => exponential(x * Math.LN10);

const doubleLog = (z: number): number => logarithmOfTen(logarithmOfTen(z));

function zOf(viscosity: number, form: D341Form): number {
  const short = viscosity + 0.7;
  return form === 'short' ? short : short + exponential(-1.47 - 1.84 * viscosity - 0.51 * viscosity ** 2);
}

function viscosityOf(z: number, form: D341Form): number {
  const short = z - 0.7;
  if (form === 'short') return short;
  return short - exponential(-0.7487 - 3.295 * short + 0.6119 * short ** 2 - 0.3193 * short ** 2 * short);
}

/** Which rule blends two viscosities; they differ by the number added to the viscosity in cSt. */
export type BlendRule = 'Refutas' | 'ASTM D7152';
const ADDED: Readonly<Record<BlendRule, number>> = { Refutas: 0.8, 'ASTM D7152': 0.7 };

/**
 * Viscosity [m²/s] of a blend at one temperature by mass: ln ln(ν + c) averaged over the mass shares. Real blends of
 * oils lie within about 10 % of it.
 *
 * @param share mass share of the second liquid, 0 to 1
 */
export function blendViscosity(first: number, second: number, share: number, rule: BlendRule): number {
  const c = ADDED[rule];
  const number = (viscosity: number) => logarithm(logarithm(toCentistokes(viscosity) + c));
  const mean = (1 - share) * number(first) + share * number(second);
  return fromCentistokes(exponential(exponential(mean)) - c);
}
