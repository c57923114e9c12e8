import { expect, test } from 'vitest';
import { chargeValue } from '$src/cells/chargeValue';
import { levelPath } from '$src/core/level/levelPath';
import { metalNamed } from '$src/core/metal/metals';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';

/** A flush channel, its basin open from the back wall to 80 mm; upright, what stands above the rim at 80 mm has left. */
const SECTION: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: 0.3, y: 0 },
  ],
  roof: [
    { x: 0, y: 0.1 },
    { x: 0.08, y: 0.1 },
    { x: 0.08, y: 0.02 },
    { x: 0.3, y: 0.02 },
  ],
  openings: [{ wall: 'roof', from: 0, to: 1 }],
  regions: [
    { name: 'basin', end: 0.15, width: 0.05 },
    { name: 'die', end: 0.3, width: 0.05 },
  ],
  mouth: 0.15,
  cavities: 1,
  pivot: { x: 0.15, y: 0 },
  vents: [],
};

const metal = metalNamed('A356')!;
const [start, end] = [fromDegrees(20), fromDegrees(-90)];

function chargeOf(volume: number) {
  const mass = volume * metal.density.value;
  const result = chargeValue(SECTION, metal, start, end, { by: 'mass', mass }, null);
  if (!('value' in result)) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Room below the rim's place when the body stands upright: 220 mm of channel 20 mm high, 50 mm wide. */
const UPRIGHT = 0.22 * 0.02 * 0.05;

test('a charge that the upright body holds spills nothing', () => {
  expect(chargeOf(0.8 * UPRIGHT).spilled).toBeCloseTo(0, 12);
});

test('what the body cannot hold on its way is told as spilled, and no more of it', () => {
  const volume = 1.6 * UPRIGHT;
  const { spilled } = chargeOf(volume);
  const path = levelPath(SECTION, volume, start, end, null);
  const standing = path.pools.at(-1)!.reduce((sum, pool) => sum + pool.volume, 0);
  expect(spilled).toBeGreaterThan(0);
  expect(spilled).toBeCloseTo(volume - standing, 12);
});
