import { describe, expect, test } from 'vitest';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { roofStretches, steelAround } from '$src/report/drawing/steel';
import { layoutOf } from '$src/ui/drawing/layout';
import { lipOf } from '$src/ui/drawing/names';
import { toDie, toPage } from '$src/ui/drawing/view';

const flush: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: 0.355, y: 0 },
  ],
  roof: [
    { x: 0, y: 0.095 },
    { x: 0.103, y: 0.095 },
    { x: 0.103, y: 0.03 },
    { x: 0.355, y: 0.03 },
  ],
  openings: [{ wall: 'roof', from: 0, to: 1 }],
  regions: [{ name: 'all', end: 0.355, width: 0.04 }],
  mouth: 0.155,
  cavities: 1,
  pivot: { x: 0.155, y: 0.01 },
  vents: [],
};
const sunk: Section = {
  ...flush,
  floor: [
    { x: 0, y: -0.025 },
    { x: 0.155, y: -0.025 },
    { x: 0.155, y: 0 },
    { x: 0.355, y: 0 },
  ],
};

describe('steel around a section', () => {
  test('an open span has no roof steel', () => {
    const steel = steelAround(flush);
    expect(roofStretches(flush)).toEqual([[1, 3]]);
    expect(Math.min(...steel.roofBlocks.flat().map((p) => p.x))).toBeCloseTo(0.103, 12);
    expect(steel.rims).toEqual([flush.roof[0], flush.roof[1]]);
  });

  test('the step at the mouth belongs to the die block', () => {
    const steel = steelAround(sunk);
    expect(steel.floorBlock[0]).toEqual({ x: 0.155, y: -0.025 });
    expect(steel.shellWall[steel.shellWall.length - 1]).toEqual({ x: 0.155, y: -0.025 });
    expect(Math.min(...steel.shell.map((p) => p.y))).toBeCloseTo(-0.025 - steel.shellThickness, 9);
  });

  test('the roof stays clear of the room for metal', () => {
    for (const p of steelAround(flush).roofBlocks.flat()) expect(p.y >= 0.03 || p.x >= 0.355).toBe(true);
  });

  test('the block ends level with its rim where that leaves steel enough, however long the basin', () => {
    const longer = (by: number): Section => ({
      ...flush,
      floor: flush.floor.map((p, i) => (i === 0 ? { ...p, x: -by } : p)),
      roof: flush.roof.map((p, i) => (i === 0 ? { ...p, x: -by } : p)),
    });
    for (const by of [0, 0.2, 0.4, 0.6]) {
      const [block] = steelAround(longer(by)).roofBlocks;
      expect(Math.max(...block!.map((p) => p.y))).toBe(0.095);
    }
    // A rim hardly over the roof: the steel leans away from it, or it would be no thicker than a sheet.
    const low = { ...flush, roof: flush.roof.map((p) => (p.y === 0.095 ? { ...p, y: 0.035 } : p)) };
    expect(Math.max(...steelAround(low).roofBlocks[0]!.map((p) => p.y))).toBeGreaterThan(0.06);
  });

  test('a lip is what metal must climb over; a flush floor has none', () => {
    expect(lipOf(flush)).toBeNull();
    expect(lipOf(sunk)).toEqual({ x: 0.155, y: 0 });
  });
});

describe('view', () => {
  const steel = steelAround(flush);
  const sweep = { start: fromDegrees(30), end: fromDegrees(-90) };
  const layout = layoutOf(flush, steel, {
    ...sweep,
    frame: 'page',
    small: false,
    dimensions: false,
    caption: true,
    width: 800,
    maxHeight: 560,
    scale: null,
  });

  test('the body stays inside the picture through the whole stroke', () => {
    for (let turn = sweep.end; turn <= sweep.start; turn += 0.01) {
      for (const corner of steel.corners) {
        const at = toPage({ ...layout.view, turn }, corner);
        expect(at.x).toBeGreaterThan(0);
        expect(at.x).toBeLessThan(layout.view.width);
        expect(at.y).toBeGreaterThan(0);
        expect(at.y).toBeLessThan(layout.view.height);
      }
    }
  });

  test('page and die frame are inverses, and uphill is up the page', () => {
    const view = { ...layout.view, turn: fromDegrees(30) };
    const back = toDie(view, toPage(view, { x: 0.3, y: 0.02 }));
    expect(back.x).toBeCloseTo(0.3, 12);
    expect(back.y).toBeCloseTo(0.02, 12);
    expect(toPage(view, { x: 0.355, y: 0 }).y).toBeLessThan(toPage(view, { x: 0, y: 0 }).y);
  });
});
