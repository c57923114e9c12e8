import { describe, expect, test } from 'vitest';
import type { MeshOutline } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import type { FrameMetal } from '$src/report/drawing/film';
import { metalOfFrame } from '$src/report/drawing/metalShape';
import { straightened } from '$src/report/drawing/straightened';
import { areaOf } from './areaOf';

/** A box 200 long and `height` high, closed above from x = `roofFrom` [m]. */
function box(cells: number, height = 0.03, roofFrom = 0): MeshOutline {
  const x = Float64Array.from({ length: cells + 1 }, (_, i) => (0.2 * i) / cells);
  const all = (value: number) => new Float64Array(cells).fill(value);
  const open = Uint8Array.from({ length: cells }, (_, i) => (x[i + 1]! <= roofFrom + 1e-12 ? 1 : 0));
  return { x, floorLeft: all(0), floorRight: all(0), roofLeft: all(height), roofRight: all(height), open };
}

/** Metal that lies level: nothing may ask how deep it is, as if it ran down the floor. */
const levelMetal = (levelOf: (cell: number) => number): FrameMetal => ({
  levelOf,
  depthOf: () => {
    throw new Error('level metal taken for a film');
  },
});

const total = (bodies: readonly (readonly Point[])[]): number =>
  bodies.reduce((sum, b) => sum + areaOf(b), 0);
const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - line[i]!.x, p.y - line[i]!.y), 0);

describe('metal of a frame', () => {
  test('level metal in a level box is one body with one straight skin', () => {
    const shape = metalOfFrame(
      box(50),
      0,
      levelMetal(() => 0.01),
    );
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
      const shape = metalOfFrame(
        box(80),
        inclination,
        levelMetal((j) => (level > (0.2 * j * Math.sin(inclination)) / 80 ? level : NaN)),
      );
      const onFloor = level / Math.sin(inclination);
      const atWall = Math.min(0.03, level / Math.cos(inclination));
      expect(total(shape.bodies)).toBeCloseTo((onFloor * atWall) / 2, 8);
    }
  });

  test('no skin where metal touches the roof', () => {
    const shape = metalOfFrame(
      box(50),
      0,
      levelMetal(() => 0.05),
    );
    expect(total(shape.bodies)).toBeCloseTo(0.2 * 0.03, 12);
    expect(shape.skins).toHaveLength(0);
  });

  test('metal at the brim of an opening has its skin there', () => {
    const shape = metalOfFrame(
      box(50, 0.03, 0.1),
      0,
      levelMetal(() => 0.05),
    );
    expect(shape.skins).toHaveLength(1);
    expect(lengthOf(shape.skins[0]!)).toBeCloseTo(0.1, 9);
  });

  test('at −90° the surface stands upright in the die frame and is skin from floor to roof', () => {
    const level = -0.0731;
    const shape = metalOfFrame(
      box(60),
      fromDegrees(-90),
      levelMetal((j) => (-(0.2 * (j + 1)) / 60 < level ? level : NaN)),
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
      const shape = metalOfFrame(
        box(60),
        inclination,
        levelMetal((j) => (lowest(j) < level ? level : NaN)),
      );
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
    const shape = metalOfFrame(
      box(100),
      0,
      levelMetal((j) => (j < 60 ? depth : NaN)),
    );
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
    const shape = metalOfFrame(
      box(100),
      0,
      levelMetal((j) => (j >= 60 ? 0.008 : NaN)),
    );
    const right = shape.skins[0]![shape.skins[0]!.length - 1]!;
    expect(right.x).toBeCloseTo(0.2, 12);
    expect(right.y).toBeCloseTo(0.008, 12);
  });

  test('separate pools are separate bodies', () => {
    const shape = metalOfFrame(
      box(100),
      0,
      levelMetal((j) => (j < 30 || j > 60 ? 0.01 : NaN)),
    );
    expect(shape.bodies).toHaveLength(2);
    expect(shape.skins).toHaveLength(2);
  });
});

describe('metal that runs down the wall as a film', () => {
  const DEPTH = 0.001;
  /** Film in the cells 5 to 40 of 60, above a pool that fills the box from cell 50 on; each level is that of the cell's own metal. */
  const filmAbovePool = (inclination: number): FrameMetal => {
    const [sine, cosine] = [Math.sin(inclination), Math.cos(inclination)];
    const width = 0.2 / 60;
    const share = DEPTH / 0.03;
    return {
      levelOf: (j) => {
        if (j >= 50) return 50 * width * sine;
        if (j < 5 || j > 40) return Number.NaN;
        return (j + 1) * width * sine - share * width * sine + DEPTH * cosine * share;
      },
      depthOf: (j) => (j >= 50 ? 0.03 : DEPTH),
    };
  };

  test.each([-90, -89.1, -88])(
    'at %f° it lies on the wall as thick as it is, not across the cavity',
    (degrees) => {
      const inclination = fromDegrees(degrees);
      const { bodies, skins } = metalOfFrame(box(60), inclination, filmAbovePool(inclination));
      const film = bodies.filter((body) => body.every(({ x }) => x < 0.15));
      expect(total(film)).toBeCloseTo((DEPTH * 36 * 0.2) / 60, 6);
      expect(Math.max(...film.flat().map(({ y }) => y))).toBeLessThanOrEqual(DEPTH + 1e-12);
      expect(Math.max(...bodies.flat().map(({ y }) => y))).toBeCloseTo(0.03, 9);
      expect(
        Math.max(
          ...skins
            .filter((line) => line.every(({ x }) => x < 0.15))
            .flat()
            .map(({ y }) => y),
        ),
      ).toBeLessThanOrEqual(DEPTH + 1e-12);
    },
  );

  test('past the upright it lies on the roof', () => {
    const inclination = fromDegrees(-92);
    const { bodies } = metalOfFrame(box(60), inclination, filmAbovePool(inclination));
    const film = bodies.filter((body) => body.every(({ x }) => x < 0.15));
    expect(Math.min(...film.flat().map(({ y }) => y))).toBeGreaterThanOrEqual(0.03 - DEPTH - 1e-12);
  });

  test('it is drawn up to the roof where it fills the gap', () => {
    const inclination = fromDegrees(-89);
    const thick = { ...filmAbovePool(inclination), depthOf: () => 0.05 };
    const { bodies, skins } = metalOfFrame(box(60), inclination, thick);
    expect(Math.max(...bodies.flat().map(({ y }) => y))).toBeLessThanOrEqual(0.03);
    expect(skins.flat().filter(({ x }) => x > 0.04 && x < 0.11)).toHaveLength(0);
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
