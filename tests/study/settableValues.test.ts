import { expect, test } from 'vitest';
import { fromDegrees, fromMillimetres, METRIC, toInches } from '$src/core/units';
import { settable } from '$src/report/study/settable';
import { settableValues } from '$src/report/study/settableValues';
import type { NamedAxis } from '$src/report/study/studyFile';

const axis = (rest: Partial<NamedAxis>): NamedAxis => ({
  setting: 'charge.mass',
  name: 'charge',
  quantity: 'mass',
  from: 0.41237,
  to: 0.6,
  points: 8,
  setPoint: null,
  ...rest,
});

test('points between the ends of a range are such as a shop can set; the ends stay as they were typed', () => {
  const angle = axis({ setting: 'tilt.start', quantity: 'angle', from: 0, to: fromDegrees(40) });
  const third = settableValues(
    [axis({}), angle],
    { 'charge.mass': 0.45, 'tilt.start': fromDegrees(40 / 3) },
    METRIC,
  );
  expect(third['charge.mass']).toBe(0.45);
  expect(third['tilt.start']).toBeCloseTo(fromDegrees(13.3), 12);
  expect(settableValues([axis({})], { 'charge.mass': 0.41237 }, METRIC)).toEqual({ 'charge.mass': 0.41237 });
});

test('a light charge is weighed finer, a length goes by the unit that is shown', () => {
  expect(settable(0.043219, 'mass', METRIC)).toBe(0.0432);
  expect(settable(fromMillimetres(-0.04), 'level', METRIC)).toBe(0);
  const inches = { ...METRIC, length: 'in' } as const;
  expect(toInches(settable(0.0123456, 'length', inches))).toBeCloseTo(0.486, 12);
});
