import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelPath } from '$src/core/level/levelPath';
import { metalPolygons } from '$src/core/level/metalPolygons';
import type { Pool } from '$src/core/level/pools';
import { cavityVolume } from '$src/core/section/cavity';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { areaBetween, metalBelow, shoelace } from './levelFillOracle';
import { anySection, deepBasin, pitBasin, sectionOf } from './levelFillSections';

const SEED = 20250611;

/**
 * The oracle looks this far under the level [m], since at a pool that stands exactly at its crest it must not see
 * over it. The library now and then fails where a corner lies on the level; then it looks lower.
 */
const UNDER = [1e-14, 3e-14, 1e-13];

function areaUnder(section: Section, inclination: number, pool: Pool): number | null {
  for (const under of UNDER) {
    try {
      return areaBetween(metalBelow(section, inclination, pool.level - under), pool.from, pool.to);
    } catch (failure) {
      if (!String(failure).includes('Unable to')) throw failure;
    }
  }
  return null;
}

interface Comparison {
  worst: number;
  pools: number;
  most: number;
  /** Pools the library could not cut. */
  failed: number;
}

/** Largest relative difference between pools of a path and the oracle, over every k-th sample; and pools compared. */
function compare(section: Section, volume: number, start: number, end: number, every: number): Comparison {
  const path = levelPath(section, volume, fromDegrees(start), fromDegrees(end), null);
  const result = { worst: 0, pools: 0, most: 0, failed: 0 };
  for (let i = 0; i < path.inclination.length; i += every) {
    const inclination = path.inclination[i]!;
    const pools = path.pools[i]!.filter((pool) => pool.volume > 1e-6 * volume);
    const outlines = metalPolygons(section, pools, inclination);
    pools.forEach((pool, k) => {
      const area = areaUnder(section, inclination, pool);
      if (area === null) result.failed++;
      const drawn = Math.abs(shoelace(outlines[k]!.map(({ x, y }): [number, number] => [x, y])));
      result.worst = Math.max(
        result.worst,
        Math.abs((area ?? pool.volume) - pool.volume) / volume,
        Math.abs(drawn - pool.volume) / volume,
      );
    });
    result.pools += pools.length;
    result.most = Math.max(result.most, pools.length);
  }
  return result;
}

describe('level fill against a polygon library', () => {
  // Steps, two pools with a spill, roof contact from −1° on, an opening that sheds metal.
  const twoPits = sectionOf(
    [
      [0, -20],
      [60, -20],
      [60, 10],
      [100, 10],
      [120, -30],
      [200, -25],
      [230, 5],
      [300, 0],
    ],
    [
      [0, 60],
      [90, 60],
      [90, 30],
      [180, 25],
      [180, 12],
      [300, 20],
    ],
    100,
    [{ wall: 'roof', from: 0, to: 1 }],
  );
  test.each([
    ['pit basin', pitBasin, 2880e-6, 0, -100, 1],
    ['deep basin', deepBasin, 6900e-6, 75, -100, 1],
    ['two pits', twoPits, 4000e-6, 60, -100, 2],
  ] as const)(
    '%s: every pool of the path holds the area the oracle finds',
    (_, section, volume, start, end, atLeast) => {
      expect(checkSection(section)).toEqual([]);
      const { worst, pools, most, failed } = compare(section, volume, start, end, 3);
      expect(failed).toBe(0);
      expect(pools).toBeGreaterThan(100);
      expect(most).toBeGreaterThanOrEqual(atLeast);
      expect(worst).toBeLessThan(1e-9);
    },
  );

  test('random sections: pools and drawn outlines hold the area the oracle finds', () => {
    let compared = 0;
    let several = 0;
    let unfit = 0;
    fc.assert(
      fc.property(
        anySection,
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        fc.integer({ min: -20, max: 75 }),
        (section, share, start) => {
          expect(checkSection(section)).toEqual([]);
          const { worst, pools, most, failed } = compare(
            section,
            share * cavityVolume(section),
            start,
            -100,
            23,
          );
          compared += pools - failed;
          unfit += failed;
          if (most > 1) several++;
          expect(worst).toBeLessThan(1e-9);
        },
      ),
      { seed: SEED, numRuns: 60, endOnFailure: true },
    );
    expect(compared).toBeGreaterThan(500);
    expect(unfit).toBeLessThan(compared / 100);
    expect(several).toBeGreaterThan(10);
  });
});
