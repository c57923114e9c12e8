import { exponential } from '$src/core/elementary/exponential';

const NO_CHANGE = 1e-17;
/** Beyond this the error function is 1 to the last bit. */
const SATURATED = 6;

/** erf(x) for x ≥ 0: erf x = 2/√π exp(−x²) Σ 2ⁿ x²ⁿ⁺¹/(1·3·…·(2n+1)), all terms positive. Abramowitz & Stegun 7.1.6. */
export function errorFunction(x: number): number {
  if (x >= SATURATED) return 1;
  let term = x;
  let sum = x;
  for (let n = 1; term > NO_CHANGE * sum; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * exponential(-x * x) * sum;
}
