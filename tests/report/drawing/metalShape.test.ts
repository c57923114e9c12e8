import { describe, expect, test } from 'vitest';
import type { MeshOutline } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { metalOfFrame } from '$src/report/drawing/metalShape';
import { straightened } from '$src/report/drawing/straightened';

/** A box 200 long and `height` high, closed above from x = `roofFrom` [m]. */
function box(cells: number, height = 0.03, roofFrom = 0): MeshOutline {
  const x = Float64Array.from({ length: cells + 1 }, (_, i) => (0.2 * i) / cells);
  const all = (value: number) => new Float64Array(cells).fill(value);
  const open = Uint8Array.from({ length: cells }, (_, i) => (x[i + 1]! <= roofFrom + 1e-12 ? 1 : 0));
  return { x, floorLeft: all(0), floorRight: all(0), roofLeft: all(height), roofRight: all(height), open };
}

const area = (polygon: readonly Point[]): number =>
  Math.abs(
    polygon.reduce((sum, a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      return sum + a.x * b.y - b.x * a.y;
    }, 0),
  ) / 2;
const total = (bodies: readonly (readonly Point[])[]): number => bodies.reduce((sum, b) => sum + area(b), 0);
const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - line[i]!.x, p.y - line[i]!.y), 0);

describe('metal of a frame', () => {
  test('level metal in a level box is one body with one straight skin', () => {
    const shape = metalOfFrame(box(50), 0, () => 0.01);
    expect(shape.bodies).toHaveLength(1);
    expect(total(shape.bodies)).toBeCloseTo(0.2 * 0.01, 12);
    expect(shape.skins).toHaveLength(1);
    expect(lengthOf(shape.skins[0]!)).toBeCloseTo(0.2, 9);
    expect(shape.skins[0]).toHaveLength(2);
  });

  test('a wedge against the back wall keeps its area at any angle (geometry of a triangle)', () => {
    for (const degrees of [10, 25, 40]) {
      const inclination = fromDegrees(degrees);
      const level = 0.012;
      const shape = metalOfFrame(box(80), inclination, (j) =>
        level > (0.2 * j * Math.sin(inclination)) / 80 ? level : NaN,
      );
      const onFloor = level / Math.sin(inclination);
      const atWall = Math.min(0.03, level / Math.cos(inclination));
      expect(total(shape.bodies)).toBeCloseTo((onFloor * atWall) / 2, 8);
    }
  });

  test('no skin where metal touches the roof', () => {
    const shape = metalOfFrame(box(50), 0, () => 0.05);
    expect(total(shape.bodies)).toBeCloseTo(0.2 * 0.03, 12);
    expect(shape.skins).toHaveLength(0);
  });

  test('metal at the brim of an opening has its skin there', () => {
    const shape = metalOfFrame(box(50, 0.03, 0.1), 0, () => 0.05);
    expect(shape.skins).toHaveLength(1);
    expect(lengthOf(shape.skins[0]!)).toBeCloseTo(0.1, 9);
  });

  test('at −90° the surface stands upright in the die frame and is skin from floor to roof', () => {
    const level = -0.0731;
    const shape = metalOfFrame(box(60), fromDegrees(-90), (j) =>
      -(0.2 * (j + 1)) / 60 < level ? level : NaN,
    );
    expect(total(shape.bodies)).toBeCloseTo((0.2 - 0.0731) * 0.03, 9);
    expect(shape.skins).toHaveLength(1);
    expect(lengthOf(shape.skins[0]!)).toBeCloseTo(0.03, 9);
    for (const p of shape.skins[0]!) expect(p.x).toBeCloseTo(0.0731, 9);
  });

  test('at the ends of the range, +75° and −100°, metal lies below its level on either side (geometry of a trapezoid)', () => {
    for (const [degrees, level] of [
      [75, 0.05],
      [-100, -0.0731],
    ] as const) {
      const inclination = fromDegrees(degrees);
      const sine = Math.sin(inclination);
      const rise = 0.03 * Math.cos(inclination);
      const lowest = (j: number) =>
        Math.min((0.2 * j * sine) / 60, (0.2 * (j + 1) * sine) / 60) + Math.min(0, rise);
      const shape = metalOfFrame(box(60), inclination, (j) => (lowest(j) < level ? level : NaN));
      const onFloor = level / sine;
      const onRoof = (level - rise) / sine;
      const middle = (onFloor + onRoof) / 2;
      expect(total(shape.bodies)).toBeCloseTo(0.03 * (degrees > 0 ? middle : 0.2 - middle), 9);
      expect(shape.skins).toHaveLength(1);
      expect(lengthOf(shape.skins[0]!)).toBeCloseTo(Math.hypot(0.03, onFloor - onRoof), 9);
    }
  });

  test('the front has a round nose that comes down to the floor at the front', () => {
    const depth = 0.008;
    const shape = metalOfFrame(box(100), 0, (j) => (j < 60 ? depth : NaN));
    const skin = shape.skins[0]!;
    const tip = skin[skin.length - 1]!;
    expect(tip.x).toBeCloseTo(0.12, 9);
    expect(tip.y).toBeCloseTo(0, 9);
    const removed = 0.12 * depth - total(shape.bodies);
    // A quarter of an ellipse takes 1 − π/4 of its box, half the depth long.
    expect(removed).toBeCloseTo((1 - Math.PI / 4) * (depth / 2) * depth, 6);
    expect(Math.max(...skin.map((p) => p.y))).toBeCloseTo(depth, 9);
  });

  test('metal against the end wall has no nose', () => {
    const shape = metalOfFrame(box(100), 0, (j) => (j >= 60 ? 0.008 : NaN));
    const right = shape.skins[0]![shape.skins[0]!.length - 1]!;
    expect(right.x).toBeCloseTo(0.2, 12);
    expect(right.y).toBeCloseTo(0.008, 12);
  });

  test('separate pools are separate bodies', () => {
    const shape = metalOfFrame(box(100), 0, (j) => (j < 30 || j > 60 ? 0.01 : NaN));
    expect(shape.bodies).toHaveLength(2);
    expect(shape.skins).toHaveLength(2);
  });
});

describe('a line with fewer points', () => {
  test('keeps within 0.03 mm of every point of a slow curve', () => {
    const curve = Array.from({ length: 400 }, (_, i) => ({ x: i * 0.0005, y: 0.00002 * i * (i / 400) }));
    const line = straightened(curve);
    expect(line.length).toBeLessThan(60);
    for (const p of curve) {
      const i = line.findIndex((q) => q.x >= p.x);
      const b = line[i]!;
      const a = line[Math.max(0, i - 1)]!;
      const y = b.x === a.x ? b.y : a.y + ((b.y - a.y) * (p.x - a.x)) / (b.x - a.x);
      expect(Math.abs(y - p.y)).toBeLessThan(3.1e-5);
    }
  });
});
