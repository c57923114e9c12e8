/**
 * Sine and cosine that are the same to the last bit on every machine.
 *
 * The language leaves the last digit of `Math.sin` to its engine, and engines differ in it. A pour that folds is
 * chaotic: a last digit of its inclination can move what becomes of its gas by a per cent, so one book would tell
 * other figures in a browser than on the command line. Sums and products are exact by IEEE 754, hence these.
 *
 * Source: the polynomials and the split of π/2 are those of fdlibm (Sun Microsystems 1993, k_sin.c, k_cos.c and
 * e_rem_pio2.c, written down from memory); tests/core/elementary/sine.test.ts holds them within one unit in the last
 * place of a sum in extended precision.
 */

/** Constants each of its own: taken out of an array at every call, they cost more than the sum. */
const S1 = -0.16666666666666632;
const S2 = 8.33333333332249e-3;
const S3 = -1.984126982985795e-4;
const S4 = 2.7557313707070068e-6;
const S5 = -2.5050760253406863e-8;
const S6 = 1.58969099521155e-10;
const C1 = 0.0416666666666666;
const C2 = -1.388888888887411e-3;
const C3 = 2.480158728947673e-5;
const C4 = -2.7557314351390663e-7;
const C5 = 2.087572321298175e-9;
const C6 = -1.1359647557788195e-11;

/** π/2 in three pieces of 33 bits and what is left: turns times a piece is exact up to LARGEST. */
const FIRST = 1.5707963267341256;
const SECOND = 6.077100506303966e-11;
const REST = 2.0222662487959506e-21;
/** Largest angle [rad] that the split of π/2 serves: far more than a die ever turns. */
const LARGEST = 1e5;

/** Sine of an angle [rad] of at most 1e5. Throws a RangeError beyond, or for what is no number. */
export function sine(angle: number): number {
  const { quarters, x, y } = reduce(angle);
  const value = quarters % 2 === 0 ? sineNearZero(x, y) : cosineNearZero(x, y);
  return quarters < 2 ? value : -value;
}

/** Cosine of an angle [rad] of at most 1e5. Throws a RangeError beyond, or for what is no number. */
export function cosine(angle: number): number {
  const { quarters, x, y } = reduce(angle);
  const value = quarters % 2 === 0 ? cosineNearZero(x, y) : sineNearZero(x, y);
  return quarters === 1 || quarters === 2 ? -value : value;
}

/** Sine and cosine of one angle [rad]; what each of them gives alone, for the work of one and a half. */
export function sineAndCosine(angle: number): { readonly sin: number; readonly cos: number } {
  const { quarters, x, y } = reduce(angle);
  const isEven = quarters % 2 === 0;
  const near = sineNearZero(x, y);
  const far = cosineNearZero(x, y);
  const sin = isEven ? near : far;
  const cos = isEven ? far : near;
  return { sin: quarters < 2 ? sin : -sin, cos: quarters === 1 || quarters === 2 ? -cos : cos };
}

/** The angle less whole quarter turns: at most π/4, as a sum x + y, and which quarter it came from, 0 to 3. */
function reduce(angle: number): { quarters: number; x: number; y: number } {
  if (!(Math.abs(angle) <= LARGEST))
    throw new RangeError(`angle: got ${angle} rad, expected at most ${LARGEST}`);
  const turns = Math.round(angle / (Math.PI / 2));
  const first = angle - turns * FIRST;
  const second = first - turns * SECOND;
  const rest = turns * REST - (first - second - turns * SECOND);
  const x = second - rest;
  return { quarters: turns - 4 * Math.floor(turns / 4), x, y: second - x - rest };
}

function sineNearZero(x: number, y: number): number {
  const z = x * x;
  const series = S2 + z * (S3 + z * (S4 + z * (S5 + z * S6)));
  return x - (z * (0.5 * y - z * x * series) - y - z * x * S1);
}

function cosineNearZero(x: number, y: number): number {
  const z = x * x;
  const series = z * (C1 + z * (C2 + z * (C3 + z * (C4 + z * (C5 + z * C6)))));
  const half = 0.5 * z;
  const near = 1 - half;
  return near + (1 - near - half + (z * series - x * y));
}
