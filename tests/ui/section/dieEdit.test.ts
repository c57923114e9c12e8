import { describe, expect, test } from 'vitest';
import { cavityVolume, heightAt } from '$src/core/section/cavity';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { flushBasin, hingeArm, pitBehindSill, taperedLever, thinWall } from '$src/core/section/shapes';
import { SIZES } from '$src/core/section/sizes';
import { fromMillimetres } from '$src/core/units';
import { dieHeightTo, dieLengthTo } from '$src/ui/section/dieEdit';
import { type DiePart, dieParts, heightsOver, lengthOf } from '$src/ui/section/dieSize';
import type { SizeEdit } from '$src/ui/section/sizeEdit';

const mm = fromMillimetres;
const SHAPES = {
  'flush basin': flushBasin(),
  'pit behind a sill': pitBehindSill(),
  'hinge arm': hingeArm(),
  'tapered lever': taperedLever(),
  'thin wall': thinWall(),
};

function made(edit: SizeEdit): Section {
  if ('issue' in edit) throw new Error(edit.issue.message);
  return edit.section;
}
const issueOf = (edit: SizeEdit) => ('issue' in edit ? edit.issue : null);
const whole = (section: Section): DiePart => dieParts(section)[0]!;
function partCalled(section: Section, name: string): DiePart {
  const part = dieParts(section).find((one) => one.name === name);
  if (!part) throw new Error(`The die has no ${name}.`);
  return part;
}
/** Without the dust of floating point, which an edit takes away. */
const rounded = (points: Section['roof']) =>
  points.map(({ x, y }) => [Number(x.toFixed(9)), Number(y.toFixed(9))]);

describe.each(Object.entries(SHAPES))('the die of a %s', (_, section) => {
  const now = lengthOf(whole(section));

  test.each([-0.03, 0.02])('longer by %s m keeps basin, mouth and pivot, and every height', (by) => {
    const next = made(dieLengthTo(section, whole(section), now + by));
    expect(lengthOf(whole(next))).toBeCloseTo(now + by, 9);
    expect(next.mouth).toBeCloseTo(section.mouth, 9);
    expect(rounded([next.pivot])).toEqual(rounded([section.pivot]));
    expect(next.roof.map(({ y }) => y)).toEqual(section.roof.map(({ y }) => y));
    expect(next.floor.map(({ y }) => y)).toEqual(section.floor.map(({ y }) => y));
    const before = ({ x }: Section['pivot']) => x <= section.mouth + mm(0.001);
    expect(rounded(next.roof.filter(before))).toEqual(rounded(section.roof.filter(before)));
    expect(next.vents[0]!.place).toBeCloseTo(section.vents[0]!.place + by, 9);
    expect(checkSection(next)).toEqual([]);
  });

  test('longer and back again is as it was', () => {
    const there = made(dieLengthTo(section, whole(section), now + 0.0317));
    expect(made(dieLengthTo(there, whole(there), now))).toEqual(
      made(dieLengthTo(section, whole(section), now)),
    );
  });

  test('higher by 3 mm gains that over all its length and leaves floor and basin as they are', () => {
    const { greatest } = heightsOver(section, whole(section));
    const next = made(dieHeightTo(section, whole(section), greatest + mm(3)));
    const last = next.floor.at(-1)!.x;
    for (const share of [0.01, 0.3, 0.6, 0.99]) {
      const x = section.mouth + share * (last - section.mouth);
      expect(heightAt(next, x, 'right') - heightAt(section, x, 'right')).toBeCloseTo(mm(3), 9);
    }
    expect(rounded(next.floor)).toEqual(rounded(section.floor));
    expect(rounded(next.roof.slice(0, 2))).toEqual(rounded(section.roof.slice(0, 2)));
    expect(next.roof).toHaveLength(section.roof.length);
    expect(checkSection(next)).toEqual([]);
  });

  test('is refused in words where nothing would be left of it, or where it would be too long', () => {
    const short = issueOf(dieLengthTo(section, whole(section), mm(0.5)));
    expect(short?.message).toMatch(/nothing would be left between .* mm is kept\.$/);
    const [, least] = /Type ([\d.]+) mm or more/.exec(short!.remedy)!;
    expect(checkSection(made(dieLengthTo(section, whole(section), mm(Number(least)))))).toEqual([]);
    expect(issueOf(dieLengthTo(section, whole(section), SIZES.most))?.message).toMatch(
      /would be longer than/,
    );
    const flat = issueOf(dieHeightTo(section, whole(section), mm(0.5)));
    expect(flat?.message).toMatch(/the roof would come down to the floor/);
    const [, lowest] = /Type ([\d.]+) mm or more/.exec(flat!.remedy)!;
    expect(checkSection(made(dieHeightTo(section, whole(section), mm(Number(lowest)))))).toEqual([]);
  });
});

describe('a hinge arm', () => {
  const arm = hingeArm();

  test('made longer is longer in its arm alone; feeder end and boss keep their length', () => {
    const next = made(dieLengthTo(arm, whole(arm), lengthOf(whole(arm)) + mm(20)));
    const lengths = (section: Section) =>
      dieParts(section).map((part) => Math.round(lengthOf(part) * 1e6) / 1e3);
    expect(lengths(arm)).toEqual([230, 50, 140, 40]);
    expect(lengths(next)).toEqual([250, 50, 160, 40]);
  });

  test('has a boss that can be longer and higher by itself', () => {
    const longer = made(dieLengthTo(arm, partCalled(arm, 'Boss'), mm(55)));
    expect(lengthOf(partCalled(longer, 'Boss'))).toBeCloseTo(mm(55), 9);
    expect(rounded(longer.roof.slice(0, -1))).toEqual(rounded(arm.roof.slice(0, -1)));
    const higher = made(dieHeightTo(arm, partCalled(arm, 'Boss'), mm(31)));
    expect(rounded(higher.roof.slice(0, -2))).toEqual(rounded(arm.roof.slice(0, -2)));
    expect(heightsOver(higher, partCalled(higher, 'Boss')).greatest).toBeCloseTo(mm(31), 9);
  });

  test('has an arm that keeps its taper when it is thicker', () => {
    const thicker = made(dieHeightTo(arm, partCalled(arm, 'Arm'), mm(16)));
    const { least, greatest } = heightsOver(thicker, partCalled(thicker, 'Arm'));
    expect([least, greatest].map((height) => Number(height.toFixed(9)))).toEqual([mm(12), mm(16)]);
    expect(checkSection(thicker)).toEqual([]);
  });
});

describe('a straight roof over two regions', () => {
  const { regions, ...rest } = flushBasin();
  const section: Section = {
    ...rest,
    regions: [regions[0]!, { name: 'Gate', end: 0.2, width: 0.06 }, { ...regions[1]!, name: 'Wall' }],
  };

  test('gets a step where one of them alone is made higher', () => {
    const next = made(dieHeightTo(section, partCalled(section, 'Wall'), mm(34)));
    expect(heightsOver(next, partCalled(next, 'Gate')).greatest).toBeCloseTo(mm(30), 9);
    expect(heightsOver(next, partCalled(next, 'Wall'))).toEqual({ least: mm(34), greatest: mm(34) });
    expect(checkSection(next)).toEqual([]);
    expect(cavityVolume(next) - cavityVolume(section)).toBeCloseTo(0.155 * 0.06 * mm(4), 9);
    const gate = made(dieHeightTo(section, partCalled(section, 'Gate'), mm(26)));
    expect(heightsOver(gate, partCalled(gate, 'Wall')).least).toBeCloseTo(mm(30), 9);
    expect(checkSection(gate)).toEqual([]);
  });
});

test('a die drawn as a curve of short pieces is stretched evenly', () => {
  const section = flushBasin();
  const from = section.mouth;
  const curve = Array.from({ length: 21 }, (_, i) => ({
    x: from + i * 0.01,
    y: 0.03 + 0.01 * Math.sin(i / 5),
  }));
  const curved = { ...section, roof: [...section.roof.slice(0, 3), ...curve] };
  expect(checkSection(curved)).toEqual([]);
  const next = made(dieLengthTo(curved, whole(curved), 0.3));
  const inDie = next.roof.slice(3).map(({ x }) => x - from);
  for (const [i, x] of inDie.entries()) expect(x).toBeCloseTo(i * 0.015, 9);
});

test('an outline that is wrong is put right first', () => {
  const section = { ...flushBasin(), mouth: 9 };
  const part = { name: 'the whole die', region: null, from: 0.1, to: 0.3 };
  expect(issueOf(dieLengthTo(section, part, 0.2))?.message).toMatch(/wrong as it stands/);
  expect(issueOf(dieHeightTo(section, part, 0.2))?.message).toMatch(/wrong as it stands/);
});
