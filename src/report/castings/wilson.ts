/** 95 % two-sided: the normal quantile of 0.975. */
const NORMAL_975 = 1.959963985;

/** A rate with the range it may well have. */
export interface RateRange {
  readonly rate: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The rate of `count` in `total` with its 95 % Wilson score interval: all rates p for which the observed rate lies
 * within 1.96 √(p (1 − p) / n) of p. It stays between 0 and 1 and says something useful at no faults at all.
 * Source: E. B. Wilson, Probable inference, the law of succession, and statistical inference, J. Am. Stat. Assoc. 22
 * (1927) 209; NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1.
 * Throws unless 0 ≤ count ≤ total and total > 0.
 */
export function wilson(count: number, total: number): RateRange {
  if (!(total > 0 && count >= 0 && count <= total))
    throw new Error(`${count} in ${total} is no rate, expected 0 ≤ count ≤ total, total > 0.`);
  const rate = count / total;
  const square = NORMAL_975 ** 2;
  const middle = rate + square / (2 * total);
  const reach = NORMAL_975 * Math.sqrt((rate * (1 - rate)) / total + square / (4 * total ** 2));
  const whole = 1 + square / total;
  // At the ends the interval touches 0 or 1 exactly; rounding must not carry it beyond.
  const from = count === 0 ? 0 : (middle - reach) / whole;
  const to = count === total ? 1 : (middle + reach) / whole;
  return { rate, from, to };
}

/** Whether two rates cannot be told apart by the rule of this program: their intervals share a value. */
export const overlap = (a: RateRange, b: RateRange): boolean => a.from <= b.to && b.from <= a.to;
