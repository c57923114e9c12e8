import { describe, expect, test } from 'vitest';
import type { Book, SectionCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { wholeLength, wholeSection } from '$src/cells/wholeLengths';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { flushBasin, hingeArm, pitBehindSill, taperedLever, thinWall } from '$src/core/section/shapes';
import { fromInches, fromMillimetres, toInches } from '$src/core/units';

const INCHES = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
const shapes = { flushBasin, pitBehindSill, hingeArm, taperedLever, thinWall };
const lengthsOf = ({ floor, roof, regions, mouth, vents }: Section): number[] => [
  ...[...floor, ...roof].flatMap(({ x, y }) => [x, y]),
  ...regions.flatMap(({ end, width }) => [end, width]),
  ...vents.map(({ place }) => place),
  mouth,
];
const isTwentieth = (length: number): boolean => {
  const steps = toInches(length) * 20;
  return Math.abs(steps - Math.round(steps)) < 1e-9;
};

describe('lengths a shop would set out', () => {
  test.each(Object.entries(shapes))(
    '%s in inches is sound, and a twentieth at most from its millimetres',
    (_, make) => {
      const inches = wholeSection(make(), 'in');
      expect(checkSection(inches)).toEqual([]);
      expect(lengthsOf(inches).filter((length) => !isTwentieth(length))).toEqual([]);
      const moved = lengthsOf(inches).map((length, index) => Math.abs(length - lengthsOf(make())[index]!));
      expect(Math.max(...moved)).toBeLessThanOrEqual(fromInches(0.0251));
    },
  );

  test.each(Object.entries(shapes))('%s in millimetres is as it was', (_, make) => {
    const [before, after] = [lengthsOf(make()), lengthsOf(wholeSection(make(), 'mm'))];
    expect(after).toHaveLength(before.length);
    for (const [index, length] of after.entries()) expect(length).toBeCloseTo(before[index]!, 12);
  });

  test('a taper is rounded at both ends', () => {
    const section = flushBasin();
    const tapered = {
      ...section,
      regions: section.regions.map((region) => ({ ...region, widthAtEnd: 0.0437 })),
    };
    for (const { widthAtEnd } of wholeSection(tapered, 'mm').regions) expect(widthAtEnd).toBe(0.044);
  });

  test('what is there is never rounded to nothing', () => {
    expect(wholeLength(fromMillimetres(-0.4), 'mm')).toBeCloseTo(-0.001, 12);
    expect(wholeLength(fromMillimetres(0.4), 'in')).toBeCloseTo(fromInches(0.05), 12);
    expect(wholeLength(0, 'in')).toBe(0);
  });

  test('a new section in a book of inches reads in twentieths of an inch', () => {
    const book: Book = { title: '', casting: '', units: INCHES, cells: [] };
    const { section } = newCell('section', book) as SectionCell;
    expect(lengthsOf(section).filter((length) => !isTwentieth(length))).toEqual([]);
    expect(toInches(section.mouth)).toBeCloseTo(3.95, 9);
  });
});
