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
    /** Half of the columns taper. */
    widthAtEnd: fc.option(length(0.01, 0.2), { freq: 1 }),
  })
  .map(({ left, run, floorLeft, floorRight, highLeft, highRight, width, widthAtEnd }) => ({
    left,
    right: left + run,
    floorLeft,
    floorRight,
    roofLeft: floorLeft + highLeft,
    roofRight: floorRight + highRight,
    widthLeft: width,
    widthRight: widthAtEnd ?? width,
  }));
const inclination = length(-90, 60).map(fromDegrees);
const parameters = { seed: 424242, numRuns: 2000 };

test('chord by elevation adds up to the full column (area identity)', () => {
  fc.assert(
    fc.property(column, inclination, (shape, angle) => {
      const levels = columnLevels(shape, Math.sin(angle), Math.max(0, Math.cos(angle)));
      const { z1, z2, z3, z4, w2, w3, bulge1, bulge2, bulge3, full } = levels;
      const straight = (w2 * (z2 - z1)) / 2 + ((w2 + w3) * (z3 - z2)) / 2 + (w3 * (z4 - z3)) / 2;
      const bulges = (bulge1 * (z2 - z1)) / 6 + (bulge2 * (z3 - z2)) / 6 + (bulge3 * (z4 - z3)) / 6;
      expect(Math.abs(straight + bulges - full) / full).toBeLessThan(1e-11);
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

/** 100 by 40 mm, 50 mm wide. */
const BOX: Column = {
  left: 0,
  right: 0.1,
  floorLeft: 0,
  floorRight: 0,
  roofLeft: 0.04,
  roofRight: 0.04,
  widthLeft: 0.05,
  widthRight: 0.05,
};

test('by hand: a level 100 by 40 mm column half full, and upright a third full', () => {
  expect(volumeBelow(columnLevels(BOX, 0, 1), 0.02)).toBeCloseTo(0.1 * 0.02 * 0.05, 15);
  expect(volumeBelow(columnLevels(BOX, -1, 0), -0.1 + 0.1 / 3)).toBeCloseTo((0.1 / 3) * 0.04 * 0.05, 15);
});

test('by hand: a tapering box upright holds a frustum, and on its side half of its mean', () => {
  const box: Column = { ...BOX, widthRight: 0.02 };
  // Turned down, the narrow end is the lowest; 30 mm up it is 29 mm wide.
  expect(volumeBelow(columnLevels(box, -1, 0), -0.07)).toBeCloseTo((0.03 * 0.04 * (0.02 + 0.029)) / 2, 15);
  expect(volumeBelow(columnLevels(box, 0, 1), 0.02)).toBeCloseTo(0.1 * 0.02 * 0.035, 15);
});

/** The same column cut into many thin ones, each with the width at its middle. */
function inSlices({ left, right, widthLeft, widthRight, ...heights }: Column, count: number): Column[] {
  const at = (from: number, to: number, k: number) => from + ((to - from) * k) / count;
  return Array.from({ length: count }, (_, k) => {
    const width = at(widthLeft, widthRight, k + 0.5);
    return {
      left: at(left, right, k),
      right: at(left, right, k + 1),
      floorLeft: at(heights.floorLeft, heights.floorRight, k),
      floorRight: at(heights.floorLeft, heights.floorRight, k + 1),
      roofLeft: at(heights.roofLeft, heights.roofRight, k),
      roofRight: at(heights.roofLeft, heights.roofRight, k + 1),
      widthLeft: width,
      widthRight: width,
    };
  });
}

test('a tapering column holds what thin slices of even width hold', () => {
  fc.assert(
    fc.property(column, inclination, length(0.01, 0.99), (shape, angle, share) => {
      const [sin, cos] = [Math.sin(angle), Math.max(0, Math.cos(angle))];
      const levels = columnLevels(shape, sin, cos);
      const here = levels.z1 + share * (levels.z4 - levels.z1);
      const slices = inSlices(shape, 200).map((slice) => volumeBelow(columnLevels(slice, sin, cos), here));
      const sum = slices.reduce((total, volume) => total + volume, 0);
      expect(Math.abs(sum - volumeBelow(levels, here)) / levels.full).toBeLessThan(2e-5);
    }),
    { ...parameters, numRuns: 300 },
  );
});
