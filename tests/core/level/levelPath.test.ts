import { describe, expect, test } from 'vitest';
import { largestFall } from '$src/core/level/figures';
import { levelPath } from '$src/core/level/levelPath';
import { fromDegrees, toDegrees } from '$src/core/units';
import { goodBasin, pitBasin, sectionOf } from '../../verify/levelFillSections';

const degrees = fromDegrees;

describe('first flow', () => {
  test('already in the die: the charge reaches past the mouth at the start', () => {
    expect(levelPath(goodBasin, 8000e-6, degrees(30), degrees(-90), null).firstFlow).toEqual({
      kind: 'already in the die',
    });
    expect(levelPath(goodBasin, 1000e-6, degrees(-10), degrees(-90), null).firstFlow).toEqual({
      kind: 'already in the die',
    });
  });
  test('never: the tilt ends before the lip', () => {
    expect(levelPath(pitBasin, 1000e-6, 0, degrees(-5), null).firstFlow).toEqual({ kind: 'never' });
  });
});

test('metal parts at a crest that comes up under it, each side keeping what it held', () => {
  // A bump in the die floor; metal over it at +0.5°, then the far side falls away.
  const bump = sectionOf(
    [
      [0, 0],
      [100, 0],
      [150, 10],
      [200, 0],
      [300, 0],
    ],
    [
      [0, 50],
      [300, 50],
    ],
    50,
  );
  const path = levelPath(bump, 2600e-6, degrees(0.5), degrees(-6), null);
  const before = path.pools[0]!;
  const after = path.pools.at(-1)!;
  expect(before).toHaveLength(1);
  expect(after).toHaveLength(2);
  // Parting and spilling: the left pool stands at the crest.
  const inclination = path.inclination.at(-1)!;
  const crest = 0.15 * Math.sin(inclination) + 0.01 * Math.cos(inclination);
  expect(after[0]!.level).toBeCloseTo(crest, 12);
  expect(after[0]!.level).toBeGreaterThan(after[1]!.level);
});

test('a full pool under a back wall opening leaves over its lower rim', () => {
  const open = sectionOf(
    [
      [0, 10],
      [0, 10],
      [20, 0],
      [200, 0],
    ],
    [
      [0, 40],
      [200, 40],
    ],
    100,
    [{ wall: 'back wall' }],
  );
  const path = levelPath(open, 0.2 * 0.04 * 0.9, degrees(20), degrees(0), null);
  const rim = 0.01 * Math.cos(degrees(20));
  expect(path.pools[0]![0]!.level).toBeLessThanOrEqual(rim + 1e-12);
  expect(path.spilled[0]!).toBeGreaterThan(0);
});

test('past upright the roof carries the metal', () => {
  const path = levelPath(goodBasin, 6900e-6, degrees(30), degrees(-100), null);
  expect(toDegrees(path.inclination.at(-1)!)).toBeCloseTo(-100, 9);
  expect(path.share.at(-1)!).toBeCloseTo(1, 6);
  const last = path.pools.at(-1)!.reduce((sum, pool) => sum + pool.volume, path.spilled.at(-1)!);
  expect(last).toBeCloseTo(6900e-6, 15);
});

test('the fall from pool to pool is between their levels while metal passes, and nothing when none does', () => {
  // Two level trays 20 mm apart: what leaves the upper lands on the floor of the lower.
  const trays = sectionOf(
    [
      [0, 20],
      [90, 20],
      [90, 25],
      [100, 25],
      [100, 0],
      [200, 0],
    ],
    [
      [0, 80],
      [200, 80],
    ],
    100,
  );
  const path = levelPath(trays, 0.09 * 0.005, degrees(1), degrees(-10), null);
  const first = path.fall.findIndex((fall) => fall > 0);
  const inclination = path.inclination[first]!;
  // Uphill or downhill decides which end of the lower tray is lowest.
  const lowest = Math.min(0.1 * Math.sin(inclination), 0.2 * Math.sin(inclination));
  const crest =
    Math.max(0.09 * Math.sin(inclination), 0.1 * Math.sin(inclination)) + 0.025 * Math.cos(inclination);
  expect(path.fall[first]!).toBeCloseTo(crest - lowest, 7);
  expect(largestFall(path).fall).toBeGreaterThan(0.02);
  expect(levelPath(trays, 0.09 * 0.002, degrees(1), degrees(-1), null).fall.every((fall) => fall === 0)).toBe(
    true,
  );
});

test('the same input gives the same numbers', () => {
  const once = levelPath(pitBasin, 2880e-6, 0, degrees(-90), null);
  const again = levelPath(pitBasin, 2880e-6, 0, degrees(-90), null);
  expect(again).toEqual(once);
});
