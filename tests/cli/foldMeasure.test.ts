import { expect, it } from 'vitest';
import { foldMeasure } from '$src/cli/foldMeasure';
import { fromCelsius } from '$src/core/units';

it('tells the strength of a fold in the units of the figures above it, not in those of the solver', () => {
  const told = (value: number, unit: 'K' | 'm' | 'm²' | 'Pa' | 'm/s') =>
    foldMeasure({ value, unit, quantity: 'there' });
  expect(told(fromCelsius(600), 'K')).toBe('600 °C there');
  expect(told(0.243, 'm')).toBe('243 mm there');
  expect(told(0.00163, 'm²')).toBe('1630 mm² there');
  expect(told(2310, 'Pa')).toBe('2310 Pa there');
  expect(told(0.657, 'm/s')).toBe('0.657 m/s there');
});
