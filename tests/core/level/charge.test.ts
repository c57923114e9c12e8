import { describe, expect, test } from 'vitest';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { allowedFall } from '$src/core/level/figures';
import { fillLevelFromVolume, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { headFromVolume, volumeFromHead } from '$src/core/level/head';
import { heldAtEnd } from '$src/core/level/heldAtEnd';
import { standOf } from '$src/core/level/stand';
import { cavityVolume } from '$src/core/section/cavity';
import { flushBasin, hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { deepBasin, goodBasin, pitBasin, sectionOf } from '../../verify/levelFillSections';

const up = fromDegrees(30);
const down = fromDegrees(-90);

describe('basin capacity', () => {
  test('of a level pit is its volume up to the lip', () => {
    expect(basinCapacity(pitBasin, 0)).toBeCloseTo(0.12 * 0.025, 12);
  });
  test('of a flush basin is the wedge x² tan φ/2, cut by the rim or roof where it meets one', () => {
    expect(basinCapacity(deepBasin, up)).toBeCloseTo((0.07 ** 2 * Math.tan(up)) / 2, 12);
    // The roof's edge, 30 mm high and 52 mm before the mouth, cuts a sliver off the wedge.
    const sliver = (0.052 * Math.tan(up) - 0.03) ** 2 / (2 * Math.tan(up));
    expect(basinCapacity(goodBasin, up)).toBeCloseTo((0.155 ** 2 * Math.tan(up)) / 2 - sliver, 12);
  });
  test('of a flush basin is nothing at level and downhill', () => {
    expect(basinCapacity(goodBasin, 0)).toBe(0);
    expect(basinCapacity(goodBasin, fromDegrees(-5))).toBe(0);
  });
  test('is cut by a rim lower than the mouth', () => {
    const low = sectionOf(
      [
        [0, -25],
        [120, -25],
        [120, 0],
        [320, 0],
      ],
      [
        [0, -10],
        [20, -10],
        [20, 60],
        [120, 60],
        [120, 30],
        [320, 30],
      ],
      120,
      [{ wall: 'roof', from: 0, to: 1 }],
    );
    expect(basinCapacity(low, 0)).toBeCloseTo(0.12 * 0.015, 12);
  });
});

describe('fill level at the start', () => {
  test('in a level pit: 1 mm below the lip is 24 mm of metal', () => {
    expect(volumeFromFillLevel(pitBasin, 0, -0.001)).toBeCloseTo(0.12 * 0.024, 12);
    expect(fillLevelFromVolume(pitBasin, 0, 0.12 * 0.024)).toBeCloseTo(-0.001, 12);
  });
  test('over the lip of a pit the skin holds the metal back, which else runs over all of the floor', () => {
    const over = 0.12 * 0.025 + 0.6e-3;
    expect(fillLevelFromVolume(pitBasin, 0, over)).toBeCloseTo(0.6e-3 / 0.32, 9);
    const stand = standOf({ density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) });
    expect(fillLevelFromVolume(pitBasin, 0, over, stand)).toBeCloseTo(0.6e-3 / 0.12, 9);
  });
  test.each([
    ['flush', flushBasin(), up],
    ['pit', pitBehindSill(), 0],
    ['arm', hingeArm(), fromDegrees(20)],
  ] as const)('%s: level and volume give each other', (_, section, start) => {
    for (const fromLip of [-0.02, -0.01, -0.002, 0.004]) {
      const volume = volumeFromFillLevel(section, start, fromLip);
      expect(volume).not.toBeNull();
      expect(fillLevelFromVolume(section, start, volume!)).toBeCloseTo(fromLip, 10);
    }
  });
  test('is refused below the floor, over the rim, and for no metal', () => {
    expect(volumeFromFillLevel(pitBasin, 0, -0.03)).toBeNull();
    expect(volumeFromFillLevel(pitBasin, 0, 0.07)).toBeNull();
    expect(fillLevelFromVolume(pitBasin, 0, 0)).toBeNull();
    expect(fillLevelFromVolume(pitBasin, 0, 1)).toBeNull();
  });
});

describe('head at the end', () => {
  test('cavity full plus 30 mm over the mouth is 1.15 times the die', () => {
    expect(volumeFromHead(goodBasin, up, down, 0.03)).toBeCloseTo(6900e-6, 12);
    expect(headFromVolume(goodBasin, up, down, 6900e-6)).toBeCloseTo(0.03, 9);
  });
  test.each([0.005, 0.02, 0.04])('%f m: head and volume give each other on the arm', (head) => {
    const arm = hingeArm();
    const volume = volumeFromHead(arm, up, down, head)!;
    expect(volume).toBeGreaterThan(cavityVolume(arm));
    expect(headFromVolume(arm, up, down, volume)).toBeCloseTo(head, 8);
  });
  test('is refused where it would stand over the rim, and when the mouth is not covered', () => {
    expect(volumeFromHead(goodBasin, up, down, 0.06)).toBeNull();
    expect(headFromVolume(goodBasin, up, down, 3000e-6)).toBeNull();
  });
});

test('held and spilled at the end add up to the charge; the deep basin without a roof loses what stands over its mouth', () => {
  const { held, spilled, level } = heldAtEnd(deepBasin, 6900e-6, up, down);
  expect(held + spilled).toBeCloseTo(6900e-6, 15);
  expect(held).toBeCloseTo(0.2 * 0.03, 12);
  expect(level).toBeCloseTo(-0.07, 9);
});

test('allowed fall is v²/2g: 12.74 mm at 0.5 m/s (B06, elementary mechanics)', () => {
  expect(allowedFall(0.5)).toBeCloseTo(0.0127421, 7);
});
