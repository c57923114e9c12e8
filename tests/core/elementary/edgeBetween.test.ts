import fc from 'fast-check';
import { expect, test } from 'vitest';
import { edgeBetween } from '$src/core/elementary/edgeBetween';

test('finds the last value that holds, from either side, to the tolerance and never past the edge', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e3, max: 1e3, noNaN: true }),
      fc.double({ min: 1e-9, max: 1, noNaN: true }),
      fc.constantFrom(-1, 1),
      (edge, tolerance, way) => {
        const holds = (value: number) => way * (edge - value) >= 0;
        const found = edgeBetween(holds, edge - way * 7, edge + way * 11, tolerance);
        expect(holds(found)).toBe(true);
        expect(Math.abs(edge - found)).toBeLessThanOrEqual(tolerance);
      },
    ),
  );
});

test('a tolerance finer than numbers are ends all the same', () => {
  expect(edgeBetween((value) => value < 1e9, 0, 2e9, 0)).toBeLessThan(1e9);
});

test('where it holds all the way, or nowhere on it, it ends at that end', () => {
  expect(1 - edgeBetween(() => true, 0, 1, 1e-6)).toBeLessThanOrEqual(1e-6);
  expect(edgeBetween(() => false, 0, 1, 1e-6)).toBe(0);
});
