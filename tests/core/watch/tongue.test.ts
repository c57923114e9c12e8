import { expect, test } from 'vitest';
import type { FrontSpeeds } from '$src/core/pour/record';
import { tonguesOf } from '$src/core/watch/tongue';

/** A third-full front every 5 mm with these Froude numbers. */
function tonguesIn(froude: readonly number[]) {
  const row = (value: number) => new Float64Array(froude.length).fill(value);
  const speeds: FrontSpeeds = {
    place: Float64Array.from(froude, (_, k) => 0.1 + 5e-3 * k),
    speed: row(0.3),
    time: row(1),
    inclination: row(0),
    depth: row(8e-3),
    fullness: row(0.35),
    froude: Float64Array.from(froude),
    window: 20e-3,
  };
  return tonguesOf(speeds, 0.2);
}

const tongues = (froude: readonly number[]) =>
  tonguesIn(froude).map(({ severity }) => Math.round(severity.value * 1e3));

test('a front that shoots but for a moment is one tongue', () => {
  expect(tongues([0.9, 1.1, 1.1, 1.1, 0.99, 1.1, 1.1, 1.1, 0.9])).toEqual([30]);
});

test('twice 15 mm with 30 mm between them are none', () => {
  expect(tongues([1.1, 1.1, 1.1, 1.1, 0.9, 0.9, 0.9, 0.9, 0.9, 1.1, 1.1, 1.1, 1.1])).toEqual([]);
});

test('it is borderline unless it shoots a fifth over 1, over a fifth more than 20 mm', () => {
  const isClear = (froude: number, places: number) =>
    tonguesIn([0.9, ...Array.from({ length: places }, () => froude), 0.9])[0]?.isClear;
  expect(isClear(1.1, 9)).toBe(false);
  expect(isClear(1.3, 9)).toBe(true);
  // 25 mm of it.
  expect(isClear(1.3, 6)).toBe(true);
  // 25 mm, of which 15 mm shoot by a fifth.
  expect(tonguesIn([0.9, 1.1, 1.1, 1.3, 1.3, 1.3, 1.3, 0.9])[0]?.isClear).toBe(false);
});
