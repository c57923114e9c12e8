import { describe, expect, test } from 'vitest';
import { cavityVolume } from '$src/core/section/cavity';
import { checkSection } from '$src/core/section/checkSection';
import { flushBasin, hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { cornerName } from '$src/ui/section/cornerNames';
import { dragged, type Handle, nudged } from '$src/ui/section/handles';
import {
  canRemove,
  isOpen,
  keptMouth,
  movedTo,
  withCorner,
  withMouth,
  withoutCorner,
  withoutRegion,
  withRegionSplit,
  withRoofPiece,
  withWidthAtEnd,
} from '$src/ui/section/outlineEdit';
import { stopWords } from '$src/ui/section/stopWords';

const section = flushBasin();
const corner = (line: 'floor' | 'roof', index: number) =>
  ({ kind: 'corner', corner: { line, index } }) as const;

describe('a dragged corner', () => {
  test('snaps to the grid', () => {
    const next = dragged(section, corner('roof', 1), { x: 0.0956, y: 0.0912 }, 0.001);
    expect(next.roof[1]).toEqual({ x: 0.096, y: 0.091 });
  });

  test('stays between its neighbours and off the other line', () => {
    const next = dragged(section, corner('roof', 2), { x: 0.9, y: -0.2 }, 0.001);
    expect(next.roof[2]).toEqual({ x: 0.355, y: 0.001 });
    expect(checkSection(dragged(section, corner('roof', 1), { x: 0.05, y: 0.12 }, 0.001))).toEqual([]);
  });

  test('at the die end takes floor, roof, last region and the vent there with it', () => {
    const next = dragged(section, corner('floor', 1), { x: 0.4, y: 0 }, 0.001);
    expect(next.floor[1]!.x).toBe(0.4);
    expect(next.roof.at(-1)!.x).toBe(0.4);
    expect(next.regions.at(-1)!.end).toBe(0.4);
    expect(next.vents[0]!.place).toBe(0.4);
    expect(checkSection(next)).toEqual([]);
  });

  test('at the die end takes a vent near it along, and leaves one that is nearer to what comes before', () => {
    const vents = [0.35, 0.2].map((place) => ({ place, area: 1e-5, blocked: 0 }));
    const next = dragged({ ...section, vents }, corner('floor', 1), { x: 0.4, y: 0 }, 0.001);
    expect(next.vents[0]!.place).toBeCloseTo(0.395, 9);
    expect(next.vents[1]!.place).toBe(0.2);
  });

  test('that does not follow says why', () => {
    const why = (handle: Handle, x: number, y: number) => stopWords(section, handle, { x, y }, 0.001);
    expect(why(corner('roof', 1), 0.096, 0.091)).toBeNull();
    expect(why(corner('roof', 1), 0.2, 0.091)).toBe('stops at R3: move that first');
    expect(why(corner('roof', 2), 0.05, 0.03)).toBe('stops at R2: move that first');
    expect(why(corner('roof', 2), 0.11, -0.2)).toBe('keeps 1 mm off the floor');
    expect(why(corner('roof', 0), 0.05, 0.12)).toBe('stays at the back wall: x counts from there');
    expect(why(corner('floor', 1), 0.02, 0)).toBe('keeps 1 mm off the mouth and the corners before it');
    expect(why({ kind: 'mouth' }, 0.9, 0)).toBe('leaves some basin and some die, and passes no region');
    expect(why({ kind: 'mouth' }, 0.15, 0)).toBeNull();
    expect(why({ kind: 'pivot' }, 5, 5)).toBeNull();
  });

  test('at the back wall keeps its x', () => {
    expect(dragged(section, corner('roof', 0), { x: 0.05, y: 0.12 }, 0.001).roof[0]).toEqual({
      x: 0,
      y: 0.12,
    });
  });

  test('moves by steps of the arrow keys', () => {
    expect(nudged(section, corner('roof', 2), 0.01, 0).roof[2]).toEqual({ x: 0.113, y: 0.03 });
    expect(nudged(section, { kind: 'pivot' }, 0, -0.001).pivot).toEqual({ x: 0.155, y: -0.001 });
    expect(nudged(section, { kind: 'mouth' }, -0.001, 0).mouth).toBe(0.154);
  });
});

describe('corners added and taken out', () => {
  test('openings keep their pieces of roof', () => {
    const more = withCorner(section, 'roof', 0, { x: 0.05, y: 0.1 });
    expect(more.openings).toEqual([{ wall: 'roof', from: 0, to: 2 }]);
    expect(withoutCorner(more, { line: 'roof', index: 1 }).openings).toEqual(section.openings);
    expect(withCorner(section, 'roof', 2, { x: 0.2, y: 0.04 }).openings).toEqual(section.openings);
  });

  test('an opening whose rim goes reaches to the next corner; ends cannot be taken out', () => {
    expect(withoutCorner(section, { line: 'roof', index: 1 }).openings).toEqual(section.openings);
    const later = { ...section, openings: [{ wall: 'roof', from: 1, to: 2 }] as const };
    expect(withoutCorner(later, { line: 'roof', index: 1 }).openings).toEqual([
      { wall: 'roof', from: 0, to: 1 },
    ]);
    expect(withoutCorner(later, { line: 'roof', index: 2 }).openings).toEqual([
      { wall: 'roof', from: 1, to: 2 },
    ]);
    expect(canRemove(section, { line: 'floor', index: 1 })).toBe(false);
    expect(canRemove(section, { line: 'roof', index: 0 })).toBe(false);
    expect(canRemove(section, { line: 'roof', index: 2 })).toBe(true);
  });
});

describe('openings, mouth, regions', () => {
  test('neighbouring open pieces are one opening', () => {
    const wide = withRoofPiece(section, 1, true);
    expect(wide.openings).toEqual([{ wall: 'roof', from: 0, to: 2 }]);
    const parted = withRoofPiece(withRoofPiece(wide, 2, true), 1, false);
    expect(parted.openings).toEqual([
      { wall: 'roof', from: 0, to: 1 },
      { wall: 'roof', from: 2, to: 3 },
    ]);
    expect(isOpen(parted, 1)).toBe(false);
  });

  test('the region that ends at the mouth follows it, and it passes no other region', () => {
    expect(withMouth(section, 0.14).regions[0]!.end).toBe(0.14);
    const arm = hingeArm();
    expect(keptMouth(arm, 1)).toBeLessThan(arm.regions[1]!.end);
    expect(keptMouth(arm, -1)).toBeGreaterThan(0);
  });

  test('regions split and go without a gap', () => {
    const split = withRegionSplit(section, 1, 'second');
    expect(split.regions.map((r) => r.end)).toEqual([0.155, 0.255, 0.355]);
    expect(withoutRegion(split, 1).regions.map((r) => r.end)).toEqual([0.255, 0.355]);
    expect(withoutRegion(split, 2).regions.map((r) => r.end)).toEqual([0.155, 0.355]);
    expect(withoutRegion(split, 0).regions.map((r) => r.end)).toEqual([0.255, 0.355]);
  });

  test('a taper runs on through a region that is split, and goes when its second width is emptied', () => {
    const tapered = withWidthAtEnd(section, 1, 0.08);
    const split = withRegionSplit(tapered, 1, 'second');
    const [, first, second] = split.regions;
    expect([first!.width, first!.widthAtEnd]).toEqual([0.06, 0.07]);
    expect([second!.width, second!.widthAtEnd]).toEqual([0.07, 0.08]);
    expect(cavityVolume(split)).toBeCloseTo(cavityVolume(tapered), 15);
    expect(withWidthAtEnd(tapered, 1, null)).toEqual(section);
    expect('widthAtEnd' in withWidthAtEnd(tapered, 1, null).regions[1]!).toBe(false);
  });
});

test('corners are named as a founder would', () => {
  const sill = pitBehindSill();
  const names = sill.floor.map((_, index) => cornerName(sill, { line: 'floor', index }));
  expect(names).toEqual(['basin, back', 'mouth, floor', 'mouth, lip', 'die end, floor']);
  expect(cornerName(sill, { line: 'roof', index: 0 })).toBe('back rim');
});

test('typed numbers are taken as they are, so that what is wrong can be shown', () => {
  expect(movedTo(section, { line: 'roof', index: 2 }, { x: 0.05, y: -0.002 }).roof[2]).toEqual({
    x: 0.05,
    y: -0.002,
  });
  expect(checkSection(movedTo(section, { line: 'roof', index: 2 }, { x: 0.103, y: -0.002 }))).not.toEqual([]);
});
