import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '$src/core/section/section';
import { ARC_STRAY } from '$src/fromDrawing/curves';
import { isNurbs, type Nurbs, nurbsPoint, nurbsPoints } from '$src/fromDrawing/nurbs';

const point = ([x, y]: readonly [number, number]): Point => ({ x, y });
const plain = (degree: number, knots: readonly number[], controls: readonly Point[]): Nurbs => ({
  degree,
  knots,
  controls,
  weights: controls.map(() => 1),
});

/** Piegl & Tiller, The NURBS Book, section 7.3 (from memory): weights 1, √½, 1 on a square corner are a quarter circle. */
const quarter: Nurbs = {
  degree: 2,
  knots: [0, 0, 0, 1, 1, 1],
  controls: (
    [
      [50, 0],
      [50, 50],
      [0, 50],
    ] as const
  ).map(point),
  weights: [1, Math.SQRT1_2, 1],
};

/** The same, section 7.5 (from memory): nine control points round a square are the whole circle. */
const circle: Nurbs = {
  degree: 2,
  knots: [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
  controls: (
    [
      [1, 0],
      [1, 1],
      [0, 1],
      [-1, 1],
      [-1, 0],
      [-1, -1],
      [0, -1],
      [1, -1],
      [1, 0],
    ] as const
  ).map(point),
  weights: [1, Math.SQRT1_2, 1, Math.SQRT1_2, 1, Math.SQRT1_2, 1, Math.SQRT1_2, 1],
};

/** Curves of all degrees to five: knots from steps of which some are nothing, ends clamped or not. */
const curves = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 6 }), fc.boolean())
  .chain(([degree, more, isClamped]) => {
    const count = degree + 1 + more;
    const coordinate = fc.integer({ min: -100, max: 100 });
    return fc.record({
      degree: fc.constant(degree),
      knots: fc
        .array(fc.integer({ min: 1, max: 4 }), { minLength: count + degree, maxLength: count + degree })
        .map((steps) => knotsOf(steps, degree, count, isClamped)),
      controls: fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: count, maxLength: count }),
      weights: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: count, maxLength: count }),
    });
  });

function knotsOf(steps: readonly number[], degree: number, count: number, isClamped: boolean): number[] {
  let place = 0;
  return [
    0,
    ...steps.map((step, index) => (place += isClamped && (index < degree || index >= count) ? 0 : step)),
  ];
}

/** All spans of a curve with places in them, their ends counted. */
const places = ({ degree, knots, controls }: Nurbs): { span: number; u: number }[] =>
  controls
    .map((_, span) => span)
    .filter((span) => span >= degree && knots[span + 1]! > knots[span]!)
    .flatMap((span) =>
      [0, 0.3, 0.7, 1].map((share) => ({
        span,
        u: knots[span]! + share * (knots[span + 1]! - knots[span]!),
      })),
    );

const settings = { seed: 20271, numRuns: 200 };

describe('a rational B-spline', () => {
  it('with weights 1, √½, 1 is exactly a quarter circle', () => {
    for (let step = 0; step <= 100; step++) {
      const { x, y } = nurbsPoint(quarter, 2, step / 100);
      expect(Math.hypot(x, y)).toBeCloseTo(50, 12);
    }
    // By symmetry the middle of the parameter is the middle of the arc.
    expect(nurbsPoint(quarter, 2, 0.5).x).toBeCloseTo(50 * Math.SQRT1_2, 12);
  });

  it('of nine control points is a whole circle, cut about as finely as an arc is', () => {
    const points = nurbsPoints(circle);
    for (const { x, y } of points) expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
    expect(points.at(-1)!.x).toBeCloseTo(points[0]!.x, 12);
    for (const [index, { x, y }] of points.slice(1).entries()) {
      const before = points[index]!;
      expect(Math.hypot((x + before.x) / 2, (y + before.y) / 2)).toBeGreaterThanOrEqual(1 - ARC_STRAY);
    }
    expect(points.length).toBeLessThan(150);
  });

  it('without clamps has the known points at its knots: (1, 4, 1)/6 of a uniform cubic, halves of a quadratic', () => {
    // C. de Boor, A Practical Guide to Splines, chapter X (from memory): values of uniform B-splines at their knots.
    const controls = (
      [
        [0, 0],
        [6, 0],
        [6, 12],
        [0, 6],
        [3, 3],
      ] as const
    ).map(point);
    const cubic = nurbsPoints(plain(3, [0, 1, 2, 3, 4, 5, 6, 7, 8], controls));
    expect(cubic[0]!.x).toBeCloseTo((0 + 4 * 6 + 6) / 6, 12);
    expect(cubic[0]!.y).toBeCloseTo((0 + 0 + 12) / 6, 12);
    expect(cubic.at(-1)!.x).toBeCloseTo((6 + 0 + 3) / 6, 12);
    const quadratic = nurbsPoints(plain(2, [0, 1, 2, 3, 4, 5, 6, 7], controls));
    expect(quadratic[0]).toEqual({ x: 3, y: 0 });
    expect(quadratic.at(-1)).toEqual({ x: 1.5, y: 4.5 });
  });

  it('begins and ends at its control points where clamped, and at degree one goes through them all', () => {
    const controls = (
      [
        [0, 0],
        [10, 5],
        [20, -5],
        [30, 0],
      ] as const
    ).map(point);
    const clamped = nurbsPoints(plain(3, [2, 2, 2, 2, 5, 5, 5, 5], controls));
    expect([clamped[0], clamped.at(-1)]).toEqual([controls[0], controls[3]]);
    expect(nurbsPoints(plain(1, [0, 0, 1, 2, 3, 3], controls))).toEqual(controls);
  });

  it('has bases that add up to one, and draws a straight line from its knots’ means', () => {
    // Partition of unity and linear precision (The NURBS Book, sections 2.2 and 5.4, from memory).
    fc.assert(
      fc.property(curves, (curve) => {
        const one = curve.controls.map(() => ({ x: 1, y: 1 }));
        const { degree, knots } = curve;
        const means = curve.controls.map((_, index) => {
          const mean =
            knots.slice(index + 1, index + 1 + degree).reduce((sum, knot) => sum + knot, 0) / degree;
          return { x: mean, y: -2 * mean };
        });
        for (const { span, u } of places(curve)) {
          expect(nurbsPoint({ ...curve, controls: one }, span, u).x).toBeCloseTo(1, 10);
          expect(nurbsPoint(plain(degree, knots, means), span, u).x).toBeCloseTo(u, 9);
          expect(nurbsPoint(plain(degree, knots, means), span, u).y).toBeCloseTo(-2 * u, 9);
        }
      }),
      settings,
    );
  });

  it('moves as its control points are moved, scaled, sheared and turned (affine invariance)', () => {
    // The NURBS Book, section 4.2, property P4.5 (number from memory).
    const number = fc.integer({ min: -5, max: 5 });
    fc.assert(
      fc.property(
        curves,
        fc.tuple(number, number, number, number, number, number),
        (curve, [a, b, c, d, e, f]) => {
          const moved = ({ x, y }: Point): Point => ({ x: a * x + b * y + e, y: c * x + d * y + f });
          for (const { span, u } of places(curve)) {
            const there = nurbsPoint({ ...curve, controls: curve.controls.map(moved) }, span, u);
            const expected = moved(nurbsPoint(curve, span, u));
            expect(there.x).toBeCloseTo(expected.x, 8);
            expect(there.y).toBeCloseTo(expected.y, 8);
          }
        },
      ),
      settings,
    );
  });

  it('strays from its chords by no more than it says, looked for more finely than it looked itself', () => {
    fc.assert(
      fc.property(curves, (curve) => {
        const points = nurbsPoints(curve);
        const side = (list: number[]): number => Math.max(...list) - Math.min(...list);
        const size = Math.max(side(curve.controls.map(({ x }) => x)), side(curve.controls.map(({ y }) => y)));
        for (const { span, from, to } of finely(curve))
          for (let step = 0; step < 40; step++) {
            const on = nurbsPoint(curve, span, from + ((to - from) * step) / 40);
            // A tenth above: the chords are looked at in three places only.
            expect(nearest(on, points)).toBeLessThanOrEqual((1.1 * ARC_STRAY * size) / 2 + 1e-9);
          }
      }),
      { ...settings, numRuns: 100 },
    );
  });

  it('is none with knots too few, falling or all alike, a weight of nothing, or a break', () => {
    expect(isNurbs(quarter)).toBe(true);
    const wrong: Partial<Nurbs>[] = [
      { knots: [0, 0, 0, 1, 1] },
      { knots: [0, 0, 0, 1, 0.5, 1] },
      { knots: [1, 1, 1, 1, 1, 1] },
      { weights: [1, 0, 1] },
      { weights: [1, 1] },
      { degree: 0 },
      { degree: 3 },
      { degree: 1.5 },
    ];
    for (const change of wrong)
      expect(isNurbs({ ...quarter, ...change }), JSON.stringify(change)).toBe(false);
    const controls = (
      [
        [0, 0],
        [1, 1],
        [5, 5],
        [6, 6],
      ] as const
    ).map(point);
    expect(isNurbs(plain(1, [0, 0, 1, 1, 2, 2], controls))).toBe(false);
  });
});

const finely = ({ degree, knots, controls }: Nurbs) =>
  controls
    .map((_, span) => ({ span, from: knots[span]!, to: knots[span + 1]! }))
    .filter(({ span, from, to }) => span >= degree && to > from);

/** Distance of a point from a line of chords. */
const nearest = (on: Point, points: readonly Point[]): number =>
  Math.min(
    ...points.slice(1).map((to, index) => {
      const from = points[index]!;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const square = dx * dx + dy * dy;
      const along = square > 0 ? ((on.x - from.x) * dx + (on.y - from.y) * dy) / square : 0;
      const share = Math.min(1, Math.max(0, along));
      return Math.hypot(on.x - from.x - share * dx, on.y - from.y - share * dy);
    }),
  );
