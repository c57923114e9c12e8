import { expect, test } from 'vitest';
import { fillLevelFromVolume, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { cavityVolume, wholeVolume } from '$src/core/section/cavity';
import type { Region, Section } from '$src/core/section/section';
import { flushBasin } from '$src/core/section/shapes';
import { widthAt } from '$src/core/section/widthAt';
import { fromDegrees } from '$src/core/units';

/** The flush basin, 155 mm long and 95 mm deep, narrowing from 120 to 40 mm; its die opens from 20 to 90 mm. */
const TAPERED: Section = {
  ...flushBasin(),
  regions: [
    { name: 'Basin', end: 0.155, width: 0.12, widthAtEnd: 0.04 },
    { name: 'Die', end: 0.355, width: 0.02, widthAtEnd: 0.09 },
  ],
};

/** The same in steps of even width. */
function inSteps(section: Section, count: number): Section {
  let begin = section.floor[0]!.x;
  const regions = section.regions.flatMap(({ name, end }): Region[] => {
    const from = begin;
    begin = end;
    return Array.from({ length: count }, (_, k) => ({
      name: `${name} ${k}`,
      end: k === count - 1 ? end : from + ((end - from) * (k + 1)) / count,
      width: widthAt(section, from + ((end - from) * (k + 0.5)) / count, 'right'),
    }));
  });
  return { ...section, regions };
}

test('cavity and whole section by hand', () => {
  expect(cavityVolume(TAPERED)).toBeCloseTo(0.2 * 0.03 * 0.055, 15);
  // Open basin 103 mm long and 95 mm deep from 120 mm width down, then 52 mm under the roof, 30 mm high.
  const atRim = 0.12 - (0.08 * 0.103) / 0.155;
  const basin = (0.095 * 0.103 * (0.12 + atRim)) / 2 + (0.03 * 0.052 * (atRim + 0.04)) / 2;
  expect(wholeVolume(TAPERED)).toBeCloseTo(basin + 0.2 * 0.03 * 0.055, 15);
});

test('a wedge against the wide back wall, by hand: its width is that of its centre of area', () => {
  const [tan, length] = [Math.tan(fromDegrees(30)), 0.1];
  const slope = (0.04 - 0.12) / 0.155;
  const wedge = (length ** 2 * tan * (0.12 + (slope * length) / 3)) / 2;
  const fromLip = (length - 0.155) * Math.sin(fromDegrees(30));
  expect(volumeFromFillLevel(TAPERED, fromDegrees(30), fromLip)).toBeCloseTo(wedge, 12);
  expect(fillLevelFromVolume(TAPERED, fromDegrees(30), wedge)).toBeCloseTo(fromLip, 12);
});

const STAND = standOf({ density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) });

test.each([['without', null] as const, ['with', STAND] as const])(
  'the level fill of a taper is that of 400 steps of even width, %s a stand',
  (_, stand) => {
    const volume = 1.2 * cavityVolume(TAPERED);
    const [start, end] = [fromDegrees(30), fromDegrees(-90)];
    const tapered = levelPath(TAPERED, volume, start, end, stand);
    const stepped = levelPath(inSteps(TAPERED, 400), volume, start, end, stand);
    const at = (path: typeof tapered, degrees: number) => {
      const k = path.inclination.findIndex((inclination) => inclination <= fromDegrees(degrees) + 1e-9);
      return { share: path.share[k]!, front: path.front[k]!, level: path.pools[k]!.at(-1)!.level };
    };
    for (const degrees of [20, 10, 0, -20, -60, -90]) {
      const [one, other] = [at(tapered, degrees), at(stepped, degrees)];
      expect(one.share).toBeCloseTo(other.share, 4);
      expect(one.front).toBeCloseTo(other.front, 4);
      expect(one.level).toBeCloseTo(other.level, 5);
    }
    const pools = tapered.pools.at(-1)!.reduce((sum, pool) => sum + pool.volume, 0);
    expect((pools + tapered.spilled.at(-1)!) / volume).toBeCloseTo(1, 12);
  },
);
