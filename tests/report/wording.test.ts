import { describe, expect, it } from 'vitest';
import {
  countText,
  fixed,
  fromMouthText,
  listText,
  peakPlaceText,
  percentText,
  secondsText,
  significant,
} from '$src/report/wording';

describe('numbers as people read them', () => {
  it.each([
    [0, '0'],
    [0.0123, '0.012'],
    [0.81, '0.81'],
    [4.44, '4.4'],
    [9.97, '10'],
    [58.2, '58'],
    [854.4, '854'],
    [12345, '12300'],
    [-3.21, '−3.2'],
    [0.9999999, '1.0'],
  ])('%d is written %s', (value, text) => expect(significant(value)).toBe(text));

  it('never writes a negative nought', () => {
    expect(fixed(-0.004, 2)).toBe('0.00');
    expect(fixed(-0.006, 2)).toBe('−0.01');
  });

  it('keeps a share from rounding to none or all', () => {
    expect(percentText(0.001)).toBe('under 1 %');
    expect(percentText(0.997)).toBe('99.7 %');
    expect(percentText(1)).toBe('100 %');
    expect(percentText(0.664)).toBe('66 %');
  });

  it('writes times, lists and counts', () => {
    expect(secondsText(0.4)).toBe('0.40 s');
    expect(secondsText(12.34)).toBe('12.3 s');
    expect(listText(['a', 'b', 'c'])).toBe('a, b and c');
    expect(countText(1, 'fold')).toBe('one fold');
    expect(countText(2, 'fold')).toBe('two folds');
  });
});

it.each([
  [0.04, '40 mm from the mouth', ' at 40 mm from the mouth'],
  [-0.005, '5 mm before the mouth', ' 5 mm before the mouth'],
  [-0.0003, 'at the mouth', ' at the mouth'],
])('a place of %f m is told as %s', (place, words, goingOn) => {
  expect([fromMouthText(place), peakPlaceText(place)]).toEqual([words, goingOn]);
});
