import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Column, chordAt, columnLevels, volumeBelow } from '$src/core/level/columnVolume';
import { levelOf } from '$src/core/level/poolVolume';
import { fromDegrees } from '$src/core/units';

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const column: fc.Arbitrary<Column> = fc
  .record({
    left: length(0, 0.3),
    run: length(0.001, 0.2),
    floorLeft: length(-0.1, 0.1),
    floorRight: length(-0.1, 0.1),
    highLeft: length(0.001, 0.1),
    highRight: length(0.001, 0.1),
    width: length(0.01, 0.2),
  })
  .map(({ left, run, floorLeft, floorRight, highLeft, highRight, width }) => ({
    left,
    right: left + run,
    floorLeft,
    floorRight,
    roofLeft: floorLeft + highLeft,
    roofRight: floorRight + highRight,
    width,
  }));
const inclination = length(-90, 60).map(fromDegrees);
const parameters = { seed: 424242, numRuns: 2000 };

test('chord by elevation adds up to the full column (area identity)', () => {
  fc.assert(
    fc.property(column, inclination, (shape, angle) => {
      const { z1, z2, z3, z4, w2, w3, full } = columnLevels(
        shape,
        Math.sin(angle),
        Math.max(0, Math.cos(angle)),
      );
      const sum = (w2 * (z2 - z1)) / 2 + ((w2 + w3) * (z3 - z2)) / 2 + (w3 * (z4 - z3)) / 2;
      expect(Math.abs(sum - full) / full).toBeLessThan(1e-11);
    }),
    parameters,
  );
});

test('level of a volume gives the volume back, from dry to full', () => {
  fc.assert(
    fc.property(column, inclination, length(0.0001, 0.9999), (shape, angle, share) => {
      const levels = columnLevels(shape, Math.sin(angle), Math.max(0, Math.cos(angle)));
      const volume = share * levels.full;
      expect(
        Math.abs(volumeBelow(levels, levelOf([levels], 0, 0, volume)) - volume) / levels.full,
      ).toBeLessThan(1e-13);
    }),
    parameters,
  );
});

test('the chord is the rate of volume with elevation', () => {
  fc.assert(
    fc.property(column, inclination, length(0.05, 0.95), (shape, angle, share) => {
      const levels = columnLevels(shape, Math.sin(angle), Math.max(0, Math.cos(angle)));
      const here = levels.z1 + share * (levels.z4 - levels.z1);
      const step = 1e-6 * (levels.z4 - levels.z1);
      if ([levels.z2, levels.z3].some((corner) => Math.abs(corner - here) < 2 * step)) return;
      const rate = (volumeBelow(levels, here + step) - volumeBelow(levels, here - step)) / (2 * step);
      expect(Math.abs(rate - chordAt(levels, here)) / Math.max(levels.w2, levels.w3)).toBeLessThan(1e-6);
    }),
    parameters,
  );
});

test('by hand: a level 100 by 40 mm column half full, and upright a third full', () => {
  const box: Column = {
    left: 0,
    right: 0.1,
    floorLeft: 0,
    floorRight: 0,
    roofLeft: 0.04,
    roofRight: 0.04,
    width: 0.05,
  };
  expect(volumeBelow(columnLevels(box, 0, 1), 0.02)).toBeCloseTo(0.1 * 0.02 * 0.05, 15);
  expect(volumeBelow(columnLevels(box, -1, 0), -0.1 + 0.1 / 3)).toBeCloseTo((0.1 / 3) * 0.04 * 0.05, 15);
});
