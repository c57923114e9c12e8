import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fromCelsius,
  fromDegrees,
  fromInches,
  fromMillimetres,
  METRIC,
  type PageUnits,
} from '$src/core/units';
import {
  type Possible,
  type QuantityKind,
  quantityOf,
  quantityText,
  signTurned,
} from '$src/ui/inputs/quantity';
import { parseNumber, parseQuantity, readQuantity } from '$src/ui/inputs/readQuantity';
import { unreadWords } from '$src/ui/inputs/unreadWords';

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
    ['1e3', 1000],
    ['2.5E-1', 0.25],
    ['12 MM', 12],
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

  test.each(['', '-', 'abc', '1.2.3', '1,234.5', '1e', 'e5', '1e999', '12 in', 'NaN', 'Infinity', '1 000 x'])(
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

/** Of the pouring temperature of a bronze [K]. */
const POURED: Possible = [fromCelsius(1045), fromCelsius(1480)];

describe('a mark before just three digits', () => {
  const read = (text: string, kind: QuantityKind, possible?: Possible, units = METRIC) => {
    const quantity = quantityOf(kind, units);
    const reading = readQuantity(text, quantity, possible);
    return reading && 'si' in reading ? quantity.toShown(reading.si) : (reading?.either ?? null);
  };

  test.each([
    // Only one of the two is possible.
    ['1,150', 'temperature', POURED, 1150],
    ['1,170 °C', 'temperature', POURED, 1170],
    ['1.170', 'temperature', POURED, 1170],
    ['12,250', 'length', undefined, 12.25],
    ['2,400', 'density', undefined, 2400],
    ['2.400', 'density', undefined, 2400],
    ['1,125', 'surface tension', undefined, 1.125],
    ['\u22121,250', 'angle', undefined, -1.25],
    ['1,500', 'count', undefined, 1500],
    ['2.000', 'count', undefined, 2000],
    ['1,500', 'heat transfer', undefined, 1500],
    ['100,125', 'contact angle', undefined, 100.125],
    // Other decimals than three, and a nought before: a decimal comma as ever.
    ['1,5', 'length', undefined, 1.5],
    ['0,125', 'length', undefined, 0.125],
    ['12,25', 'time', undefined, 12.25],
    ['1,1250', 'time', undefined, 1.125],
    ['1234,567', 'time', undefined, 1234.567],
    // A point begins decimals where both are possible.
    ['1.125', 'mass', undefined, 1.125],
    ['1.150', 'time', undefined, 1.15],
  ] as const)('“%s” as %s', (text, kind, possible, shown) => {
    expect(read(text, kind, possible)).toBeCloseTo(shown, 9);
  });

  test.each([
    ['1,250', 'length', [1250, 1.25]],
    ['12,250', 'mass', [12250, 12.25]],
    ['1,500 s', 'time', [1500, 1.5]],
    ['\u22121,250', 'level', [-1250, -1.25]],
    // Neither is possible.
    ['2,500', 'density in lb/in\u00b3', [2500, 2.5]],
  ] as const)('“%s” as %s is asked about', (text, name, either) => {
    const [kind, units] = name.startsWith('density')
      ? (['density', US] as const)
      : [name as QuantityKind, METRIC];
    expect(read(text, kind, undefined, units)).toEqual(either);
    expect(parseQuantity(text, quantityOf(kind, units))).toBeNull();
  });

  test.each([
    ['1.125', 'length', 1.125],
    ['12.250', 'length', 12.25],
    ['0.087', 'density', 0.087],
    ['0,087', 'density', 0.087],
    ['1,125', 'length', 1.125],
    ['1.125', 'mass', 1.125],
    ['2,102', 'temperature', 2102],
  ] as const)('small numbers in inches and pounds: “%s” as %s', (text, kind, shown) => {
    expect(read(text, kind, undefined, US)).toBeCloseTo(shown, 9);
  });

  test('what a field shows is never asked about', () => {
    const kinds: readonly QuantityKind[] = ['length', 'time', 'mass', 'speed', 'volume', 'ratio'];
    for (const units of [METRIC, US])
      for (const kind of kinds) {
        const quantity = quantityOf(kind, units);
        for (const shown of [1.125, 12.345, 1.001]) {
          const text = quantityText(quantity.fromShown(shown), quantity);
          expect(parseQuantity(text, quantity), `${kind} ${text}`).not.toBeNull();
          expect(Math.abs(quantity.toShown(parseQuantity(text, quantity)!) - shown)).toBeLessThan(0.01);
        }
      }
  });

  test('asked in words, with what is used meanwhile, if anything', () => {
    const either = readQuantity('1,150', quantityOf('time', METRIC));
    expect(unreadWords('1,150', either, '12.30 s')).toEqual({
      message: 'Is this 1150 or 1.15?',
      remedy: 'Type it without the comma, or with a different number of decimals; 12.30 s is still used.',
    });
    expect(unreadWords('wide', null, null).remedy).toBe(
      'Type a number such as 12.5; nothing is used until then.',
    );
    expect(unreadWords(' ', null, '2').message).toBe('Type a number.');
  });
});

test.each([
  ['22 cm', 'length', 0.22],
  ['0.22 m', 'length', 0.22],
  ['8.66 in', 'length', 0.219964],
  ['1 ft', 'length', 0.3048],
  ['2142 °F', 'temperature', 1445.3722],
  ['2102 F', 'temperature', 1423.15],
  ['1150C', 'temperature', 1423.15],
  ['1150 deg C', 'temperature', 1423.15],
  ['1400 K', 'temperature', 1400],
  ['20 deg', 'angle', Math.PI / 9],
  ['-20 degrees', 'angle', -Math.PI / 9],
  ['6°/s', 'rate', Math.PI / 30],
  ['6 deg/s', 'rate', Math.PI / 30],
  ['6 °/sec', 'rate', Math.PI / 30],
  ['2 min', 'time', 120],
  ['2 minutes', 'time', 120],
  ['12.5 sec', 'time', 12.5],
  ['300 ms', 'time', 0.3],
  ['500 g', 'mass', 0.5],
  ['2 lbs', 'mass', 0.90718474],
  ['1e3', 'length', 1],
  ['3 cm2', 'area', 3e-4],
  ['2400 kg/m3', 'density', 2400],
  ['0.0867 lb/in3', 'density', 2399.848],
  ['250 mm/s', 'speed', 0.25],
] as const)('“%s” is read as a %s', (text, kind, si) => {
  // As a share: what is small in SI must not pass for anything.
  expect(parseQuantity(text, quantityOf(kind, METRIC))! / si).toBeCloseTo(1, 5);
});

test.each([
  ['2 min', 'length'],
  ['20 deg', 'length'],
  ['5 kg', 'time'],
  ['5 C', 'mass'],
  ['5 m s', 'rate'],
] as const)('“%s” is no %s', (text, kind) => {
  expect(parseQuantity(text, quantityOf(kind, METRIC))).toBeNull();
});

test('a part of one that is counted is shown as it is', () => {
  expect(quantityText(1.5, quantityOf('count', METRIC))).toBe('1.5');
  expect(quantityText(2, quantityOf('count', METRIC))).toBe('2');
});
