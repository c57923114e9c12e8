/**
 * Exponential, logarithm and hyperbolic tangent that are the same to the last bit on every machine; see sine.ts.
 *
 * Source: the polynomials and the split of ln 2 are those of fdlibm (Sun Microsystems 1993, e_exp.c and e_log.c,
 * written down from memory); tests/core/elementary/exponential.test.ts holds them to one unit in the last place.
 */

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const EXPONENTIAL = [
  0.16666666666666602, -2.7777777777015593e-3, 6.613756321437934e-5, -1.6533902205465252e-6,
  4.1381367970572385e-8,
] as const;
const LOGARITHM = [
  0.6666666666666735, 0.3999999999940942, 0.2857142874366239, 0.22222198432149784, 0.1818357216161805,
  0.15313837699209373, 0.14798198605116586,
] as const;
/** Beyond these the answer is no ordinary number. */
const LARGEST = 709;
const SMALLEST = -708;

/** e^x; infinite above 709 and 0 below −708. */
export function exponential(x: number): number {
  if (x > LARGEST) return Number.POSITIVE_INFINITY;
  if (x < SMALLEST) return 0;
  const twos = Math.round(x / Math.LN2);
  const high = x - twos * LN2_HIGH;
  const low = twos * LN2_LOW;
  const r = high - low;
  const t = r * r;
  const [a, b, c, d, e] = EXPONENTIAL;
  const s = r - t * (a + t * (b + t * (c + t * (d + t * e))));
  return scaled(1 - (low - (r * s) / (2 - s) - high), twos);
}

/** Natural logarithm; as in the language's own, infinite at 0 and at infinity, and no number below 0. */
export function logarithm(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  const { part, twos } = split(x);
  const f = part - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const [a, b, c, d, e, g, h] = LOGARITHM;
  const series = w * (b + w * (d + w * g)) + z * (a + w * (c + w * (e + w * h)));
  const half = 0.5 * f * f;
  return twos * LN2_HIGH - (half - (s * (half + series) + twos * LN2_LOW) - f);
}

/** e^x − 1, good to a few units in the last place also where x is next to nothing (Kahan's way, from memory). */
export function exponentialLessOne(x: number): number {
  const e = exponential(x);
  if (e === 1) return x;
  const less = e - 1;
  return less === -1 || e === Number.POSITIVE_INFINITY ? less : (less * x) / logarithm(e);
}

/** ln(1 + x), as good as `exponentialLessOne`. */
export function logarithmOfOnePlus(x: number): number {
  const whole = 1 + x;
  return whole === 1 || whole === Number.POSITIVE_INFINITY ? x : (logarithm(whole) * x) / (whole - 1);
}

/** From here on the hyperbolic tangent is the same to the last bit. */
const SATURATED = 20;
const AT_SATURATED = tangentOf(SATURATED);

/** Good to 1e-16 of the whole, not of itself when x is next to nothing. */
export function hyperbolicTangent(x: number): number {
  const size = Math.abs(x);
  return Math.sign(x) * (size < SATURATED ? tangentOf(size) : AT_SATURATED);
}

function tangentOf(x: number): number {
  const e = exponential(2 * x);
  return (e - 1) / (e + 1);
}

/** x as part · 2^twos with part between √½ and √2. */
function split(x: number): { part: number; twos: number } {
  let part = x;
  let twos = 0;
  for (; part > Math.SQRT2; twos++) part /= 2;
  for (; part < Math.SQRT1_2; twos--) part *= 2;
  return { part, twos };
}

/** x · 2^twos, exactly. */
function scaled(x: number, twos: number): number {
  let value = x;
  for (let k = 0; k < Math.abs(twos); k++) value = twos > 0 ? value * 2 : value / 2;
  return value;
}
