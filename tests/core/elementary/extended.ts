/** Fixed point of 200 bits, for sums that a double cannot check itself by. */
const BITS = 200n;
export const ONE = 1n << BITS;

/** A double as it is, to the last bit that 200 places hold. */
export function extended(x: number): bigint {
  if (Math.abs(x) < 2 ** -900) return 0n;
  const power = Math.floor(Math.log2(Math.abs(x))) - 52;
  const whole = BigInt(x / 2 ** power);
  const shift = BITS + BigInt(power);
  return shift >= 0n ? whole << shift : whole >> -shift;
}

export const times = (a: bigint, b: bigint): bigint => (a * b) >> BITS;

/** Σ of terms, each the last times `factor(k)`, until nothing is left. */
export function series(first: bigint, factor: (k: bigint, term: bigint) => bigint): bigint {
  let sum = 0n;
  let term = first;
  for (let k = 1n; term !== 0n && term !== -1n; k++) {
    sum += term;
    term = factor(k, term);
  }
  return sum;
}

/** How far a double is from the value, in units of its last place. */
export function unitsOff(found: number, value: bigint): number {
  const unit = 2 ** (Math.floor(Math.log2(Math.abs(found) || 2 ** -1022)) - 52);
  return Number(((extended(found) - value) * 1000n) / extended(unit)) / 1000;
}
