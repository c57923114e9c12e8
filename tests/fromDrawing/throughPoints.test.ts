import { describe, expect, it } from 'vitest';
import type { Point } from '$src/core/section/section';
import { nurbsPoint, nurbsPoints } from '$src/fromDrawing/nurbs';
import { throughPoints } from '$src/fromDrawing/throughPoints';

const FREE = { startTangent: null, endTangent: null, isClosed: false };

/** Points of the circle of radius 50, as many as said, from the right anticlockwise. */
const around = (count: number): Point[] =>
  Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * index) / count;
    return { x: 50 * Math.cos(angle), y: 50 * Math.sin(angle) };
  });

/** Slope and bend of a span at one of its ends, by differences. */
function derivatives(
  curve: NonNullable<ReturnType<typeof throughPoints>>,
  span: number,
  u: number,
  step: number,
) {
  const [a, b, c] = [0, 1, 2].map((index) => nurbsPoint(curve, span, u + index * step)) as [
    Point,
    Point,
    Point,
  ];
  return {
    slope: (-3 * a.y + 4 * b.y - c.y) / (2 * step),
    bend: (a.y - 2 * b.y + c.y) / step ** 2,
  };
}

describe('a curve through points', () => {
  const points = [
    { x: 0, y: 0 },
    { x: 30, y: 40 },
    { x: 70, y: 40 },
    { x: 90, y: 0 },
  ];

  it('goes through each of them, as smooth at each as a cubic spline is: slope and curvature are the same on both sides', () => {
    const curve = throughPoints({ points, ...FREE })!;
    for (const [index, { x, y }] of points.entries()) {
      const span = Math.min(3 + 3 * index, 9);
      const on = nurbsPoint(curve, span, curve.knots[3 * index + 1]!);
      expect(on.x).toBeCloseTo(x, 10);
      expect(on.y).toBeCloseTo(y, 10);
    }
    for (const index of [1, 2]) {
      const u = curve.knots[3 * index + 1]!;
      const before = derivatives(curve, 3 * index, u, -1e-3);
      const behind = derivatives(curve, 3 * index + 3, u, 1e-3);
      expect(behind.slope).toBeCloseTo(before.slope, 5);
      // Second differences over a step stray by the third derivative times it.
      expect(behind.bend).toBeCloseTo(before.bend, 3);
    }
    // Natural: straight at its ends.
    expect(derivatives(curve, 3, 0, 1e-3).bend).toBeCloseTo(0, 3);
  });

  it('leaves and arrives along the tangents given, whatever their length, and is straight between two points alone', () => {
    const straight = throughPoints({
      points: [
        { x: 0, y: 0 },
        { x: 3, y: 4 },
      ],
      ...FREE,
    })!;
    expect(nurbsPoints(straight)).toHaveLength(2);
    for (const { x, y } of nurbsPoints(straight)) expect(4 * x - 3 * y).toBeCloseTo(0, 12);
    const led = throughPoints({
      points,
      startTangent: { x: 0, y: 7 },
      endTangent: { x: 0, y: -2 },
      isClosed: false,
    })!;
    expect(led.controls[1]!.x).toBeCloseTo(0, 12);
    expect(led.controls[1]!.y).toBeGreaterThan(0);
    expect(led.controls.at(-2)!.x).toBeCloseTo(90, 12);
    expect(led.controls.at(-2)!.y).toBeGreaterThan(0);
  });

  it('closed, is a circle through points of a circle but for the fourth power of their distance, and as round at its seam', () => {
    const stray = (count: number): number => {
      const curve = throughPoints({ points: around(count), ...FREE, isClosed: true })!;
      return Math.max(...nurbsPoints(curve).map(({ x, y }) => Math.abs(Math.hypot(x, y) - 50)));
    };
    // Order four of cubic interpolation (C. de Boor, chapter V, from memory): half the distance, a sixteenth.
    const [coarse, fine] = [stray(8), stray(16)];
    expect(coarse).toBeLessThan(0.1);
    expect(fine).toBeLessThan(coarse / 12);
    // All points alike: all pieces are alike, the one over the seam too.
    const curve = throughPoints({ points: around(8), ...FREE, isClosed: true })!;
    const reaches = curve.controls.map(({ x, y }) => Math.hypot(x, y)).filter((_, index) => index % 3 !== 0);
    for (const reach of reaches) expect(reach).toBeCloseTo(reaches[0]!, 10);
  });

  it('takes no account of a point given twice, and is none of a single one', () => {
    const twice = [points[0]!, points[0]!, ...points.slice(1)];
    expect(throughPoints({ points: twice, ...FREE })).toEqual(throughPoints({ points, ...FREE }));
    const ring = around(6);
    expect(throughPoints({ points: [...ring, ring[0]!], ...FREE, isClosed: true })).toEqual(
      throughPoints({ points: ring, ...FREE, isClosed: true }),
    );
    expect(throughPoints({ points: [points[1]!, points[1]!], ...FREE })).toBeNull();
  });
});
