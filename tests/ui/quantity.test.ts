import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDegrees, fromInches, fromMillimetres, METRIC, type PageUnits } from '$src/core/units';
import {
  parseNumber,
  parseQuantity,
  type QuantityKind,
  quantityOf,
  quantityText,
  signTurned,
} from '$src/ui/inputs/quantity';

const MINUS = '\u2212';
const US: PageUnits = { length: 'in', mass: 'lb', temperature: 'degF' };

describe('what people type', () => {
  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [`${MINUS}3`, -3],
    ['-3', -3],
    ['\u20133', -3],
    ['+30', 30],
    [' 4 ', 4],
    ['.5', 0.5],
    ['7.', 7],
    ['12 mm', 12],
    ['12mm', 12],
  ])('“%s” is read', (text, number) => {
    expect(parseNumber(text, 'mm')).toBe(number);
  });

  test('a number beyond all numbers is none: a book that holds one cannot be kept', () => {
    for (const text of ['9'.repeat(400), `1/${'0'.repeat(3)}`, `${'9'.repeat(400)}/7`])
      expect(parseNumber(text, 'mm')).toBeNull();
    const pressure = quantityOf('pressure', METRIC);
    expect(parseQuantity('9'.repeat(308), pressure)).toBeNull();
    expect(parseQuantity(`${'9'.repeat(400)} in`, quantityOf('length', METRIC))).toBeNull();
  });

  test.each(['', '-', 'abc', '1.2.3', '1,234.5', '1e5', '12 in', 'NaN', 'Infinity', '1 000 x'])(
    '“%s” is refused',
    (text) => {
      expect(parseNumber(text, 'mm')).toBeNull();
    },
  );
});

describe('what is shown', () => {
  test('inclinations carry their sign, true minus and plus', () => {
    const angle = quantityOf('angle', METRIC);
    expect(quantityText(fromDegrees(-90), angle)).toBe(`${MINUS}90.0`);
    expect(quantityText(fromDegrees(30), angle)).toBe('+30.0');
    expect(quantityText(fromDegrees(-0.001), angle)).toBe('0.0');
  });

  test('no more decimals than needed, never fewer than usual', () => {
    const length = quantityOf('length', METRIC);
    expect(quantityText(fromMillimetres(12), length)).toBe('12.0');
    expect(quantityText(fromMillimetres(12.345), length)).toBe('12.345');
    expect(quantityText(1, quantityOf('density', METRIC))).toBe('1');
  });

  test('what is shown can be read back, within what is shown', () => {
    for (const units of [METRIC, US]) {
      const length = quantityOf('level', units);
      const half = 0.5 * 10 ** -length.decimals[1];
      fc.assert(
        fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (metres) => {
          const back = parseNumber(quantityText(metres, length), length.unit);
          expect(back).not.toBeNull();
          expect(Math.abs(back! - length.toShown(metres))).toBeLessThanOrEqual(half * (1 + 1e-6));
        }),
        { seed: 11 },
      );
    }
  });
});

describe('fractions and other units', () => {
  test.each([
    ['1 3/8', 1.375],
    ['3/8', 0.375],
    ['1-3/8', 1.375],
    ['-1 3/8', -1.375],
    [`${MINUS}3/8`, -0.375],
    ['1 3/8"', 1.375],
    ['1 3/8 in', 1.375],
    ['2\u00bd', 2.5],
    ['\u00be in', 0.75],
    ['12.25 inches', 12.25],
    ['  7/16 ', 0.4375],
  ])('“%s” is read in inches', (text, number) => {
    expect(parseNumber(text, 'in')).toBe(number);
  });

  test.each(['1/0', '3/', '/8', '1 2 3/8', '1.5/2', '3/8/2'])('“%s” is refused', (text) => {
    expect(parseNumber(text, 'in')).toBeNull();
  });

  test('a number with its unit is read in that unit, whatever the page shows', () => {
    expect(parseQuantity('1 3/8 in', quantityOf('length', METRIC))).toBeCloseTo(0.034925, 15);
    expect(parseQuantity('40 mm', quantityOf('length', US))).toBe(0.04);
    expect(parseQuantity('2 lb', quantityOf('mass', METRIC))).toBeCloseTo(0.90718474, 15);
    expect(parseQuantity('212 °F', quantityOf('temperature', METRIC))).toBeCloseTo(373.15, 9);
    expect(parseQuantity('5 kg', quantityOf('length', US))).toBeNull();
    expect(parseQuantity('5', quantityOf('length', US))).toBe(fromInches(5));
  });
});

describe('what was typed stays what it was', () => {
  const KINDS: readonly QuantityKind[] = [
    'length',
    'level',
    'area',
    'mass',
    'temperature',
    'temperature difference',
  ];
  for (const [name, units] of [
    ['metric', METRIC],
    ['inches, pounds, Fahrenheit', US],
  ] as const) {
    test.each(KINDS)(`%s, ${name}: shown again exactly as typed`, (kind) => {
      const quantity = quantityOf(kind, units);
      const [, most] = quantity.decimals;
      fc.assert(
        fc.property(fc.integer({ min: -50_000_000, max: 50_000_000 }), (count) => {
          const typed = (count / 10 ** most).toFixed(most);
          const shown = quantityText(parseQuantity(typed, quantity)!, quantity);
          expect(Number(shown.replace(MINUS, '-'))).toBe(Number(typed) + 0);
        }),
        { seed: 12 },
      );
    });
  }
});

test('a sign is turned as it stands in the field, and the number with it', () => {
  const quantity = quantityOf('angle', METRIC);
  for (const text of ['30', '+30.0', ' −12,5', '-12.5', '1 3/8', '0.25']) {
    const before = parseQuantity(text, quantity)!;
    expect(parseQuantity(signTurned(text), quantity)).toBeCloseTo(-before, 12);
    expect(parseQuantity(signTurned(signTurned(text)), quantity)).toBeCloseTo(before, 12);
  }
  // Turned before the number is typed.
  expect(parseQuantity(`${signTurned('')}45`, quantity)).toBeCloseTo(fromDegrees(-45), 12);
});
