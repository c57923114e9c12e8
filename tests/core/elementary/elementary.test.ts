import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  exponential,
  exponentialLessOne,
  hyperbolicTangent,
  logarithm,
  logarithmOfOnePlus,
} from '$src/core/elementary/exponential';
import { cosine, sine } from '$src/core/elementary/sine';
import { extended, ONE, series, times, unitsOff } from './extended';

/* Source of every check here: the power series of the functions themselves, summed in fixed point of 200 bits. */

function sineOf(x: number): bigint {
  const square = times(extended(x), extended(x));
  return series(extended(x), (k, term) => -times(term, square) / (2n * k * (2n * k + 1n)));
}

function cosineOf(x: number): bigint {
  const square = times(extended(x), extended(x));
  return series(ONE, (k, term) => -times(term, square) / ((2n * k - 1n) * (2n * k)));
}

const exponentialOf = (x: number): bigint => series(ONE, (k, term) => times(term, extended(x)) / k);

const angles = fc.double({ min: -7, max: 7, noNaN: true }).filter((x) => Math.abs(x) > 1e-12);
const quarters = fc.integer({ min: -4, max: 4 }).filter((k) => k !== 0);

describe('sine and cosine', () => {
  test('are within a unit in the last place', () => {
    fc.assert(
      fc.property(angles, (x) => {
        expect(Math.abs(unitsOff(sine(x), sineOf(x)))).toBeLessThan(1);
        expect(Math.abs(unitsOff(cosine(x), cosineOf(x)))).toBeLessThan(1);
      }),
      { numRuns: 400 },
    );
  });

  test('keep their digits at the quarter turns, where they all but vanish', () => {
    fc.assert(
      fc.property(quarters, fc.integer({ min: -3, max: 3 }), (k, steps) => {
        const x = (k * Math.PI) / 2 + steps * 2 ** -52;
        const [found, value] = k % 2 === 0 ? [sine(x), sineOf(x)] : [cosine(x), cosineOf(x)];
        expect(Math.abs(unitsOff(found, value))).toBeLessThan(1);
      }),
    );
  });

  test.each([0, 0.5, -0.5, 1e-300])('an angle of %d', (x) => {
    expect(sine(-x) === -sine(x)).toBe(true);
    expect(cosine(-x) === cosine(x)).toBe(true);
  });

  test('refuse what is no angle of a die', () => {
    for (const angle of [Number.NaN, Number.POSITIVE_INFINITY, 2e5]) {
      expect(() => sine(angle)).toThrow(RangeError);
      expect(() => cosine(angle)).toThrow(RangeError);
    }
  });
});

describe('exponential and logarithm', () => {
  test('the exponential is within a unit in the last place', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), (x) => {
        expect(Math.abs(unitsOff(exponential(x), exponentialOf(x)))).toBeLessThan(1);
      }),
      { numRuns: 300 },
    );
  });

  test('the logarithm undoes it', () => {
    fc.assert(
      fc.property(fc.double({ min: -600, max: 600, noNaN: true }), (x) => {
        expect(Math.abs(logarithm(exponential(x)) - x)).toBeLessThanOrEqual(2 ** -52 * (1 + Math.abs(x)));
      }),
    );
  });

  test('less one and of one plus keep the digits of small numbers', () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: -1 }), fc.boolean(), (power, isNegative) => {
        const x = (isNegative ? -1 : 1) * 1.37 * 2 ** power;
        const value = exponentialOf(x) - ONE;
        expect(Math.abs(unitsOff(exponentialLessOne(x), value))).toBeLessThan(4);
        const back = logarithmOfOnePlus(exponentialLessOne(x));
        expect(Math.abs(back - x)).toBeLessThanOrEqual(2 ** -50 * Math.abs(x));
      }),
    );
  });

  test('the ends', () => {
    expect(exponential(0)).toBe(1);
    expect(exponential(800)).toBe(Number.POSITIVE_INFINITY);
    expect(exponential(-800)).toBe(0);
    expect(logarithm(1)).toBe(0);
    expect(exponentialLessOne(-800)).toBe(-1);
    expect(logarithm(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(logarithm(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
    expect(logarithm(-1)).toBeNaN();
    expect(logarithm(Number.NaN)).toBeNaN();
    expect(logarithm(5e-324)).toBeCloseTo(-1074 * Math.LN2, 10);
  });

  test('the hyperbolic tangent is odd, steep at nothing and flat far out', () => {
    expect(hyperbolicTangent(0)).toBe(0);
    expect(hyperbolicTangent(1e9)).toBe(1);
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (x) => {
        expect(hyperbolicTangent(-x) === -hyperbolicTangent(x)).toBe(true);
        const e = exponentialOf(2 * x);
        const value = ((e - ONE) * ONE) / (e + ONE);
        expect(Math.abs(Number(extended(hyperbolicTangent(x)) - value)) / Number(ONE)).toBeLessThan(4e-16);
      }),
    );
  });
});

/*
 * The bits themselves, as measured with Node 20.20 on x86: another digest on another engine means other pours there.
 * No outside source. That a browser gives the very figures of Node is shown by tests/site/sameFigures.test.ts.
 */
test('the bits are the ones on record', () => {
  const values = Float64Array.from({ length: 6000 }, (_, i) => {
    const x = (i - 3000) / 900;
    return [sine(x), cosine(x), exponential(x), hyperbolicTangent(x), logarithm(1 + i / 7)][i % 5]!;
  });
  const digest = createHash('sha256').update(new Uint8Array(values.buffer)).digest('hex');
  expect(digest).toBe('56774995ea4106dca3a5fd89e7728eabc98ed4f149b9d7d4aa554e893d6389e8');
});
