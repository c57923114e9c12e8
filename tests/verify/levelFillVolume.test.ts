import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnsOf } from '$src/core/level/columns';
import { type LevelPath, levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { anySection, goodBasin, pitBasin } from './levelFillSections';

const SEED = 71236;
const stand = standOf({ density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) });

/** Greatest loss or gain of metal over a path, relative to the charge; spilled metal counted. */
function drift(path: LevelPath, volume: number): number {
  return path.pools.reduce((worst, pools, i) => {
    const here = pools.reduce((sum, pool) => sum + pool.volume, path.spilled[i]!);
    return Math.max(worst, Math.abs(here - volume) / volume);
  }, 0);
}

/** How far any pool stands above a rim in its stretch [m]; −∞ when there is none. */
function overRim(section: Section, path: LevelPath): number {
  const { rims } = columnsOf(section);
  return path.pools.reduce((worst, pools, i) => {
    const elevation = ({ x, y }: { x: number; y: number }) =>
      x * Math.sin(path.inclination[i]!) + y * Math.cos(path.inclination[i]!);
    const heights = pools.flatMap((pool) =>
      rims.filter(({ x }) => x > pool.from && x < pool.to).map((rim) => pool.level - elevation(rim)),
    );
    return Math.max(worst, ...heights);
  }, Number.NEGATIVE_INFINITY);
}

describe('volume over whole level paths, spilled metal counted', () => {
  test.each([
    ['pit basin', pitBasin, 2880e-6, 0],
    ['pit basin, overfull', pitBasin, 9000e-6, 30],
    ['flush basin', goodBasin, 6900e-6, 30],
  ] as const)('%s keeps its metal to 1e-12', (_, section, volume, start) => {
    for (const held of [null, stand]) {
      const path = levelPath(section, volume, fromDegrees(start), fromDegrees(-100), held);
      expect(drift(path, volume)).toBeLessThan(1e-12);
    }
  });

  test('random sections keep their metal to 1e-12, never stand over a rim, never take spilled metal back', () => {
    let spilling = 0;
    fc.assert(
      fc.property(
        anySection,
        fc.double({ min: 0.02, max: 1.5, noNaN: true }),
        fc.double({ min: -30, max: 75, noNaN: true }),
        fc.boolean(),
        (section, share, start, isHeld) => {
          const volume = share * cavityVolume(section);
          const path = levelPath(
            section,
            volume,
            fromDegrees(start),
            fromDegrees(-100),
            isHeld ? stand : null,
          );
          expect(drift(path, volume)).toBeLessThan(1e-12);
          expect(overRim(section, path)).toBeLessThan(1e-9);
          expect(path.spilled.every((spilled, i) => i === 0 || spilled >= path.spilled[i - 1]!)).toBe(true);
          expect(Math.max(...path.share)).toBeLessThan(1 + 1e-9);
          expect(Math.min(...path.fall)).toBeGreaterThanOrEqual(0);
          const steps = path.inclination.slice(1).map((inclination, i) => path.inclination[i]! - inclination);
          expect(Math.max(...steps)).toBeLessThanOrEqual(fromDegrees(0.25) + 1e-12);
          expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
          if (path.spilled.at(-1)! > 0) spilling++;
        },
      ),
      { seed: SEED, numRuns: 120, endOnFailure: true },
    );
    expect(spilling).toBeGreaterThan(20);
  });
});
