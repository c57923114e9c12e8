import { describe, expect, it } from 'vitest';
import { levelPath } from '$src/core/level/levelPath';
import { poolAreas } from '$src/core/level/poolAreas';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';

/** A plain trough, 0.3 m long and 0.1 m deep, open above; basin 0.05 m wide, two cavities of 0.02 m past the mouth. */
const TROUGH: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: 0.3, y: 0 },
  ],
  roof: [
    { x: 0, y: 0.1 },
    { x: 0.3, y: 0.1 },
  ],
  openings: [{ wall: 'roof', from: 0, to: 1 }],
  regions: [
    { name: 'basin', end: 0.2, width: 0.05 },
    { name: 'die', end: 0.3, width: 0.02 },
  ],
  mouth: 0.2,
  cavities: 2,
  pivot: { x: 0.2, y: 0 },
  vents: [],
};

function areasOf(volume: number, degrees: number, section = TROUGH) {
  const inclination = fromDegrees(degrees);
  const pools = levelPath(section, volume, inclination, inclination, null).pools[0]!;
  return poolAreas(section, pools, inclination);
}

describe('areas of still metal, worked by hand', () => {
  it('a box of metal in both regions', () => {
    const depth = 0.04;
    const { contact, surface } = areasOf(depth * (0.2 * 0.05 + 0.1 * 0.04), 0);
    expect(surface).toBeCloseTo(0.2 * 0.05 + 0.1 * 0.04, 12);
    expect(contact[0]).toBeCloseTo(0.2 * 0.05 + depth * 0.05 + 2 * depth * 0.2, 12);
    expect(contact[1]).toBeCloseTo(0.1 * 0.04 + depth * 0.04 + 4 * depth * 0.1, 12);
  });

  it('a wedge against the back wall', () => {
    const length = 0.1;
    const height = length * Math.tan(fromDegrees(30));
    const { contact, surface } = areasOf((length * height * 0.05) / 2, 30);
    expect(surface).toBeCloseTo(Math.hypot(length, height) * 0.05, 10);
    expect(contact[0]).toBeCloseTo((length + height) * 0.05 + length * height, 10);
    expect(contact[1]).toBe(0);
  });

  it('a box of metal in a basin that tapers from 50 to 30 mm: its sides lean by half of that', () => {
    const [basin, die] = TROUGH.regions;
    const section = { ...TROUGH, regions: [{ ...basin!, widthAtEnd: 0.03 }, die!] };
    const depth = 0.04;
    const { contact, surface } = areasOf(depth * (0.2 * 0.04 + 0.1 * 0.04), 0, section);
    expect(surface).toBeCloseTo(0.2 * 0.04 + 0.1 * 0.04, 12);
    expect(contact[0]).toBeCloseTo(0.2 * 0.04 + depth * 0.05 + 2 * depth * Math.hypot(0.2, 0.01), 12);
    expect(contact[1]).toBeCloseTo(0.1 * 0.04 + depth * 0.04 + 4 * depth * 0.1, 12);
  });

  it('has no meaning past upright', () => {
    expect(() => poolAreas(TROUGH, [], fromDegrees(-95))).toThrow(/inclination/);
  });
});
