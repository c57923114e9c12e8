import { describe, expect, it } from 'vitest';
import { deepBasin } from '$src/core/level/deepBasin';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import table from '../../tables/B01.json';

/** A closed tank as basin, 0.4 m long and 1 m high, with a die behind a lip that no metal reaches. */
const LENGTH = table.parameters.L;
const WIDTH = 0.05;
const TANK: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: LENGTH, y: 0 },
    { x: LENGTH, y: 0.9 },
    { x: LENGTH + 0.2, y: 0.9 },
  ],
  roof: [
    { x: 0, y: 1 },
    { x: LENGTH + 0.2, y: 1 },
  ],
  openings: [],
  regions: [{ name: 'all', end: LENGTH + 0.2, width: WIDTH }],
  mouth: LENGTH,
  cavities: 1,
  pivot: { x: 0, y: 0 },
  vents: [],
};

/** Classical linear theory (Lamb; Faltinsen & Timokha 2009, from memory), first mode at each depth of the table. */
const firstModes = table.rows
  .filter((row) => row[1] === 1)
  .map((row) => ({ depth: row[0]!, kH: row[2]!, tooQuick: row[7]!, leading: row[8]! }));

describe('deep basin', () => {
  it.each(firstModes)('a tank $depth m deep has the k H and errors of the table', (mode) => {
    const found = deepBasin(TANK, LENGTH * WIDTH * mode.depth, 0)!;
    expect(found.waveNumberDepth / mode.kH).toBeCloseTo(1, 8);
    expect(found.leadingError / mode.leading).toBeCloseTo(1, 8);
    expect(found.tooQuick / mode.tooQuick).toBeCloseTo(1, 6);
    expect(found.isDeep).toBe(mode.kH > 0.5);
  });

  it('sees both sides of the limit in that table', () => {
    expect(new Set(firstModes.map(({ kH }) => kH > 0.5)).size).toBe(2);
  });

  it('takes a wedge at +30° as a tank of its own surface and area (worked out by hand)', () => {
    const start = fromDegrees(30);
    const along = 0.2;
    const area = (along ** 2 * Math.tan(start)) / 2;
    const surface = along / Math.cos(start);
    const found = deepBasin(TANK, area * WIDTH, start)!;
    expect(found.waveNumberDepth).toBeCloseTo((Math.PI * area) / surface ** 2, 8);
  });
});
