import { expect, test } from 'vitest';
import { fromInches, fromMillimetres, METRIC } from '$src/core/units';
import { shownLength, withUnit } from '$src/report/measureText';

const INCHES = { ...METRIC, length: 'in' } as const;

test.each([
  [0.082, '0.1 mm'],
  [0.04, 'under 0.1 mm'],
  [-0.04, 'under 0.1 mm'],
  [0, '0 mm'],
  [0.82, '0.8 mm'],
  [-0.82, '\u22120.8 mm'],
  [4.26, '4.3 mm'],
  [36.4, '36 mm'],
])('%f mm is told no finer than a rule in a shop tells it: %s', (millimetres, text) => {
  expect(withUnit(shownLength(fromMillimetres(millimetres), METRIC))).toBe(text);
});

test.each([
  [0.0323, '0.032 in'],
  [0.0002, 'under 0.001 in'],
  [1.237, '1.24 in'],
])('%f in is told as %s', (inches, text) => {
  expect(withUnit(shownLength(fromInches(inches), INCHES))).toBe(text);
});
