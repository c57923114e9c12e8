import { describe, expect, test } from 'vitest';
import { cavityVolume } from '$src/core/section/cavity';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { FLUSH_BASIN, flushBasin, hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { SIZES } from '$src/core/section/sizes';
import { fromMillimetres } from '$src/core/units';
import { basinDepth, basinLength, LEAST_OPENING } from '$src/report/study/basin';
import { basinDepthTo, basinLengthTo } from '$src/ui/section/basinEdit';
import type { SizeEdit } from '$src/ui/section/sizeEdit';

const SHAPES = { 'flush basin': flushBasin(), 'pit behind a sill': pitBehindSill(), 'hinge arm': hingeArm() };

function made(edit: SizeEdit): Section {
  if ('issue' in edit) throw new Error(edit.issue.message);
  return edit.section;
}
const issueOf = (edit: SizeEdit) => ('issue' in edit ? edit.issue : null);

/** Places along the axis of all that does not stand at the back wall, from the mouth [m]. */
const fromMouth = ({ floor, roof, regions, vents, pivot, mouth }: Section): number[] =>
  [
    ...[...floor, ...roof].filter(({ x }) => x > floor[0]!.x).map(({ x }) => x),
    ...regions.map(({ end }) => end),
    ...vents.map(({ place }) => place),
    pivot.x,
  ].map((x) => Number((x - mouth).toFixed(9)));

describe.each(Object.entries(SHAPES))('the basin of a %s', (_, section) => {
  test.each([0.02, 0.1])('made longer by %s m moves all but the back wall and keeps the cavity', (by) => {
    const length = basinLength(section) + by;
    const next = made(basinLengthTo(section, length));
    expect(basinLength(next)).toBeCloseTo(length, 9);
    expect(next.floor[0]).toEqual(section.floor[0]);
    expect(next.roof[0]).toEqual(section.roof[0]);
    expect(fromMouth(next)).toEqual(fromMouth(section));
    expect(next.openings).toEqual(section.openings);
    expect(cavityVolume(next)).toBeCloseTo(cavityVolume(section), 12);
    expect(checkSection(next)).toEqual([]);
  });

  test('made longer and back again is as it was', () => {
    const there = made(basinLengthTo(section, basinLength(section) + 0.0317));
    const back = made(basinLengthTo(there, basinLength(section)));
    expect(back).toEqual(made(basinLengthTo(section, basinLength(section))));
    expect(fromMouth(back)).toEqual(fromMouth(section));
  });

  test('is refused in words where too little is left open to ladle into, and is taken just before that', () => {
    const issue = issueOf(basinLengthTo(section, 0.0005));
    expect(issue?.path).toBe('basin.length');
    expect(issue?.message).toMatch(/mm of the basin open, too little to ladle into; [\d.]+ mm is kept\.$/);
    const [, least, rim] = /Type ([\d.]+) mm or more, .* or move the roof's rim R(\d+)/.exec(issue!.remedy)!;
    const shortest = made(basinLengthTo(section, fromMillimetres(Number(least))));
    expect(checkSection(shortest)).toEqual([]);
    expect(shortest.roof[Number(rim) - 1]!.x).toBeCloseTo(LEAST_OPENING, 9);
    expect(issueOf(basinLengthTo(section, fromMillimetres(Number(least) - 0.5)))).not.toBeNull();
  });

  test('keeps the reach of the roof over the basin, however short', () => {
    const reach = ({ mouth, roof, openings }: Section): number => {
      const [opening] = openings;
      if (opening?.wall !== 'roof') throw new Error('no opening in the roof');
      return mouth - roof[opening.to]!.x;
    };
    const shorter = made(basinLengthTo(section, basinLength(section) - 0.03));
    expect(reach(shorter)).toBeCloseTo(reach(section), 9);
  });

  test('with a minus is refused in words that say where the wall would stand', () => {
    const issue = issueOf(basinLengthTo(section, -0.005))!;
    expect(issue.message).toMatch(
      /^A basin of \u22125 mm would have its back wall 5 mm past the mouth; [\d.]+ mm is kept\.$/,
    );
    expect(issue.remedy).toContain('without a minus');
  });

  test('is refused where die and basin would be too long', () => {
    expect(issueOf(basinLengthTo(section, SIZES.most))?.message).toMatch(/would be longer than/);
  });

  test('put deeper keeps the cavity; through its roof it is refused', () => {
    const deeper = made(basinDepthTo(section, 0.03));
    expect(basinDepth(deeper)).toBeCloseTo(0.03, 9);
    expect(cavityVolume(deeper)).toBeCloseTo(cavityVolume(section), 12);
    expect(checkSection(deeper)).toEqual([]);
    expect(issueOf(basinDepthTo(section, -0.5))?.message).toMatch(/is kept\.$/);
  });
});

test('an outline that is wrong is put right first', () => {
  const section = { ...flushBasin(), mouth: 9 };
  expect(issueOf(basinLengthTo(section, 0.2))?.message).toMatch(/wrong as it stands/);
});

describe('a basin with some roof behind its opening', () => {
  const { floor, roof, ...rest } = flushBasin();
  const height = roof[0]!.y;
  const section: Section = {
    ...rest,
    floor,
    roof: [roof[0]!, { x: 0.02, y: height }, ...roof.slice(1)],
    openings: [{ wall: 'roof', from: 1, to: 2 }],
  };
  const opening = ({ roof: line }: Section) => line[2]!.x - line[1]!.x;

  test('is one', () => expect(checkSection(section)).toEqual([]));

  test('gives that roof up first, and the opening keeps its length', () => {
    const shorter = made(basinLengthTo(section, basinLength(section) - 0.015));
    expect(opening(shorter)).toBeCloseTo(opening(section), 9);
  });

  test('is refused where the back wall would pass a rim', () => {
    expect(issueOf(basinLengthTo(section, basinLength(section) - 0.025))?.message).toMatch(
      /the back wall would pass R2/,
    );
  });
});

test('an opening that is short already may stay so, and may not get shorter', () => {
  const narrow = flushBasin({ ...FLUSH_BASIN, basinLength: FLUSH_BASIN.roofReach + 0.018 });
  expect(issueOf(basinLengthTo(narrow, basinLength(narrow)))).toBeNull();
  expect(issueOf(basinLengthTo(narrow, basinLength(narrow) + 0.002))).toBeNull();
  expect(issueOf(basinLengthTo(narrow, basinLength(narrow) - 0.002))?.message).toMatch(
    /too little to ladle into/,
  );
});
