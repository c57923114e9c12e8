import { expect, it } from 'vitest';
import { evenFigures } from '$src/report/evenFigures';
import { significant } from '$src/report/wording';

const evened = (values: readonly number[], text: (value: number) => string): string[] =>
  evenFigures(values, values.map(text));

it('writes a column with one number of decimals', () => {
  expect(evened([0.646, 0.6, 0.571], significant)).toEqual(['0.65', '0.60', '0.57']);
  // The digits are those of the value, no noughts put on.
  expect(evened([12.34, 0.57], significant)).toEqual(['12.34', '0.57']);
  expect(evened([-20, -19.5], String)).toEqual(['\u221220.0', '-19.5']);
  expect(evened([-1, 0.5], (value) => `${value > 0 ? '+' : ''}${value}`)).toEqual(['−1.0', '+0.5']);
  expect(evened([1, 2], significant)).toEqual(['1.0', '2.0']);
});

it('leaves words as they are', () => {
  const text = (value: number): string => (Number.isFinite(value) ? String(value) : '–');
  expect(evened([0.5, Number.NaN, 1], text)).toEqual(['0.5', '–', '1.0']);
  expect(evened([0.5, 1], (value) => `${value} s`)).toEqual(['0.5 s', '1 s']);
});
