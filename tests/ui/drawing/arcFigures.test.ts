import { describe, expect, test } from 'vitest';
import { fromDegrees, toDegrees } from '$src/core/units';
import { arcBoxes, arcFigures } from '$src/ui/drawing/arcFigures';
import type { View } from '$src/ui/drawing/view';

const stroke = { start: fromDegrees(30), end: fromDegrees(-90) };
const view: View = {
  width: 700,
  height: 500,
  origin: { x: 300, y: 200 },
  pivot: { x: 0, y: 0 },
  scale: 1000,
  turn: 0,
};
const figures = (inclination: number): number[] =>
  arcFigures(stroke.start, stroke.end, fromDegrees(inclination)).map((angle) => Math.round(toDegrees(angle)));

describe('the arc of the stroke', () => {
  test('has a figure each thirty degrees, but not under its pointer', () => {
    expect(figures(-45)).toEqual([-90, -60, -30, 0, 30]);
    expect(figures(-3)).toEqual([-90, -60, -30, 30]);
  });

  test('takes room for its pointer and for each figure', () => {
    const inclination = fromDegrees(-10);
    const boxes = arcBoxes(view, 0.2, stroke, inclination);
    const at = (angle: number, reach: number) => ({
      x: 300 + reach * Math.cos(angle),
      y: 200 - reach * Math.sin(angle),
    });
    const isTaken = ({ x, y }: { x: number; y: number }): boolean =>
      boxes.some((box) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom);
    expect(isTaken(at(inclination, 195))).toBe(true);
    expect(isTaken(at(inclination, 220))).toBe(true);
    expect(isTaken(at(0, 220))).toBe(true);
    expect(isTaken(at(fromDegrees(15), 220))).toBe(false);
  });
});
