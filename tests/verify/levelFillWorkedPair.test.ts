import { describe, expect, test } from 'vitest';
import { largestFall, shareAtLevel } from '$src/core/level/figures';
import { heldAtEndOf } from '$src/core/level/heldAtEnd';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { fromDegrees, toDegrees, toMillimetres } from '$src/core/units';
import { goodBasin, pitBasin } from './levelFillSections';

/** The same casting poured two ways. Source: derived; geometry. 6900 mm² is 1.15 times the die's area. */
const GOOD_AREA = 6900e-6;
const PIT_AREA = 2880e-6;
const stand = standOf({ density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) });
const down = fromDegrees(-90);
const degrees = (path: ReturnType<typeof levelPath>) =>
  path.firstFlow.kind === 'angle' ? toDegrees(path.firstFlow.inclination) : Number.NaN;

describe('flush basin, started 30° uphill', () => {
  const path = levelPath(goodBasin, GOOD_AREA, fromDegrees(30), down, null);

  test('the wedge x² tan 30°/2 ends at the brink, 154.6 mm from the back wall and 89 mm deep there', () => {
    const wedge = Math.sqrt((2 * GOOD_AREA) / Math.tan(fromDegrees(30)));
    expect(path.front[0]! + 0.155).toBeCloseTo(wedge, 9);
    expect(toMillimetres(path.front[0]!)).toBeCloseTo(-0.396, 2);
    expect(toMillimetres(wedge * Math.tan(fromDegrees(30)))).toBeCloseTo(89.3, 1);
  });

  test('metal enters at once, nothing falls, the die end is reached while the die runs 6.25° uphill', () => {
    expect(degrees(path)).toBeCloseTo(29.873, 2);
    expect(largestFall(path).fall).toBe(0);
    const end = path.front.findIndex((front) => front >= 0.2 - 1e-9);
    expect(toDegrees(path.inclination[end]!)).toBeCloseTo(6.249, 2);
  });

  test('at level 65 % of the cavity is full; upright it is full with 30 mm over the mouth and nothing lost', () => {
    expect(shareAtLevel(path)).toBeCloseTo(23 / 35.5, 9);
    const held = heldAtEndOf(path, GOOD_AREA);
    expect(held.spilled).toBe(0);
    expect(toMillimetres(held.level + 0.155)).toBeCloseTo(30, 9);
  });
});

describe('pit behind a lip, started level', () => {
  test.each([
    ['no stand', null, -0.955],
    ['stand', stand, -12.301],
  ] as const)('%s: first flow where the closed form has it', (_, held, angle) => {
    const path = levelPath(pitBasin, PIT_AREA, 0, down, held);
    expect(degrees(path)).toBeCloseTo(angle, 2);
    expect(shareAtLevel(path)).toBe(0);
    expect(heldAtEndOf(path, PIT_AREA).spilled).toBe(0);
  });

  test('with the stand the die end lies 43 mm below the lip at first flow, and the feeding level 12 mm higher still', () => {
    const path = levelPath(pitBasin, PIT_AREA, 0, down, stand);
    const first = path.front.findIndex((front) => front > 1e-9);
    const inclination = path.inclination[first]!;
    const drop = -0.2 * Math.sin(inclination);
    expect(toMillimetres(drop)).toBeCloseTo(42.6, 1);
    const level = Math.sqrt((2 * stand.sigma * Math.cos(inclination)) / 9.81);
    expect(path.fall[first]!).toBeCloseTo(drop + level, 6);
  });

  test('over the whole stroke the pit goes on feeding from higher and higher: the greatest fall is near upright', () => {
    const { fall, inclination } = largestFall(levelPath(pitBasin, PIT_AREA, 0, down, null));
    expect(toDegrees(inclination)).toBeLessThan(-89);
    expect(toMillimetres(fall)).toBeCloseTo(104, 0);
  });
});
