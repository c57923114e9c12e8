import { describe, expect, test } from 'vitest';
import { cavityVolume } from '$src/core/section/cavity';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { flushBasin, hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { SIZES } from '$src/core/section/sizes';
import { fromMillimetres } from '$src/core/units';
import { basinDepth, basinLength } from '$src/report/study/basin';
import { type BasinEdit, basinDepthTo, basinLengthTo } from '$src/ui/section/basinEdit';

const SHAPES = { 'flush basin': flushBasin(), 'pit behind a sill': pitBehindSill(), 'hinge arm': hingeArm() };

function made(edit: BasinEdit): Section {
  if ('issue' in edit) throw new Error(edit.issue.message);
  return edit.section;
}
const issueOf = (edit: BasinEdit) => ('issue' in edit ? edit.issue : null);

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

  test('is refused in words where the back wall would pass a corner, and is taken just before that', () => {
    const issue = issueOf(basinLengthTo(section, 0.0005));
    expect(issue?.message).toMatch(/the back wall would pass (F|R|vent |the )/);
    const [, least] = /Type ([\d.]+) mm or more/.exec(issue!.remedy)!;
    const shortest = made(basinLengthTo(section, fromMillimetres(Number(least))));
    expect(checkSection(shortest)).toEqual([]);
    expect(issueOf(basinLengthTo(section, fromMillimetres(Number(least) - 0.5)))).not.toBeNull();
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
