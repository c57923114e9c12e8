import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { parseNumber, quantityOf, quantityText } from '$src/ui/inputs/quantity';

const MINUS = '\u2212';

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

  test.each(['', '-', 'abc', '1.2.3', '1,234.5', '1e5', '12 in', 'NaN', 'Infinity', '1 000 x'])(
    '“%s” is refused',
    (text) => {
      expect(parseNumber(text, 'mm')).toBeNull();
    },
  );
});

describe('what is shown', () => {
  test('inclinations carry their sign, true minus and plus', () => {
    const angle = quantityOf('angle', 'mm');
    expect(quantityText(fromDegrees(-90), angle)).toBe(`${MINUS}90.0`);
    expect(quantityText(fromDegrees(30), angle)).toBe('+30.0');
    expect(quantityText(fromDegrees(-0.001), angle)).toBe('0.0');
  });

  test('no more decimals than needed, never fewer than usual', () => {
    const length = quantityOf('length', 'mm');
    expect(quantityText(fromMillimetres(12), length)).toBe('12.0');
    expect(quantityText(fromMillimetres(12.345), length)).toBe('12.345');
    expect(quantityText(1, quantityOf('density', 'mm'))).toBe('1');
  });

  test('what is shown can be read back, within what is shown', () => {
    for (const unit of ['mm', 'in'] as const) {
      const length = quantityOf('level', unit);
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
