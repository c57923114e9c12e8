import { describe, expect, it } from 'vitest';
import type { Point } from '$src/core/section/section';
import { readDxf } from '$src/fromDrawing/readDxf';
import { drawn, refusal } from './drawn';
import { dxfFile, fitText, groups, lineText, splineText } from './dxfText';

// Group codes are those of the DXF reference, ENTITIES section, from memory.

const first = (text: string): readonly Point[] => drawn(readDxf(dxfFile(text))).lines[0]!.points;

const ellipseText = (start: number, end: number, ...more: (readonly [number, number])[]): string =>
  groups(
    [0, 'ELLIPSE'],
    [8, 'die'],
    [10, 7],
    [20, -2],
    [11, 30],
    [21, 40],
    [40, 0.4],
    [41, start],
    [42, end],
    ...more,
  );

/** Twice the area within, positive anticlockwise. */
const twiceArea = (points: readonly Point[]): number =>
  points.reduce((sum, { x, y }, index) => {
    const next = points[(index + 1) % points.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);

/** The point in the frame of the ellipse's own axes, in shares of them. */
const inAxes = ({ x, y }: Point): Point => ({
  x: ((x - 7) * 30 + (y + 2) * 40) / 2500,
  y: ((y + 2) * 30 - (x - 7) * 40) / 2500 / 0.4,
});

describe('an ELLIPSE', () => {
  it('whole, is closed and has the area π a b, less what chords that stray a quarter of a micrometre cut away', () => {
    const line = drawn(readDxf(dxfFile(ellipseText(0, 2 * Math.PI)))).lines[0]!;
    expect(line.isClosed).toBe(true);
    for (const point of line.points) expect(Math.hypot(inAxes(point).x, inAxes(point).y)).toBeCloseTo(1, 12);
    // Area of an inscribed polygon of equal parameter steps: ½ n sin(2π/n) a b.
    const step = (2 * Math.PI) / (line.points.length - 1);
    expect(50 * (1 - Math.cos(step / 2))).toBeLessThanOrEqual(0.00025);
    expect(50 * (1 - Math.cos(step))).toBeGreaterThan(0.00025);
    expect(twiceArea(line.points) / 2).toBeCloseTo((Math.PI * 50 * 20 * Math.sin(step)) / step, 8);
  });

  it('in part, runs by its parameter from start to end, over the seam too', () => {
    const quarter = first(ellipseText(0, Math.PI / 2));
    expect(quarter[0]!.x).toBeCloseTo(37, 12);
    expect(quarter[0]!.y).toBeCloseTo(38, 12);
    expect(quarter.at(-1)!.x).toBeCloseTo(7 - 16, 12);
    expect(quarter.at(-1)!.y).toBeCloseTo(-2 + 12, 12);
    const over = first(ellipseText(1.5 * Math.PI, Math.PI / 2));
    expect(over[0]!.x).toBeCloseTo(7 + 16, 12);
    expect(over[Math.floor(over.length / 2)]!.x).toBeCloseTo(37, 12);
  });

  it('with its extrusion away from the eye, runs the other way round the same axes', () => {
    const end = first(ellipseText(0, Math.PI / 2, [210, 0], [220, 0], [230, -1])).at(-1)!;
    expect(end.x).toBeCloseTo(7 + 16, 12);
    expect(end.y).toBeCloseTo(-2 - 12, 12);
  });
});

describe('a CIRCLE', () => {
  it('is a closed line of its radius', () => {
    const circle = groups([0, 'CIRCLE'], [8, 'die'], [10, 3], [20, 4], [40, 5]);
    const { points, isClosed } = drawn(readDxf(dxfFile(circle))).lines[0]!;
    expect(isClosed).toBe(true);
    for (const { x, y } of points) expect(Math.hypot(x - 3, y - 4)).toBeCloseTo(5, 12);
  });
});

describe('a SPLINE', () => {
  const quarter = {
    degree: 2,
    knots: [0, 0, 0, 1, 1, 1],
    controls: [
      [50, 0],
      [50, 50],
      [0, 50],
    ] as const,
    weights: [1, Math.SQRT1_2, 1],
  };

  it('takes its weights: 1, √½, 1 is a quarter circle, none a parabola', () => {
    // Piegl & Tiller, The NURBS Book, section 7.3, from memory.
    for (const { x, y } of first(splineText(quarter))) expect(Math.hypot(x, y)).toBeCloseTo(50, 10);
    // By its Bernstein polynomials 1 − x/50 is t² and 1 − y/50 is (1 − t)².
    const { weights: _, ...plain } = quarter;
    for (const { x, y } of first(splineText(plain)))
      expect(Math.sqrt(1 - x / 50) + Math.sqrt(1 - y / 50)).toBeCloseTo(1, 7);
  });

  it('that is periodic closes where its knots are not clamped', () => {
    // Its first control points repeat at its end, as many as its degree (The NURBS Book, section 12.2, from memory).
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const;
    const controls = [...square, square[0], square[1], square[2]];
    const knots = Array.from({ length: 11 }, (_, index) => index);
    const { points, isClosed } = drawn(
      readDxf(dxfFile(splineText({ degree: 3, knots, controls, flags: 11 }))),
    ).lines[0]!;
    expect(isClosed).toBe(true);
    expect(points.at(-1)!.x).toBeCloseTo(points[0]!.x, 12);
    expect(points.at(-1)!.y).toBeCloseTo(points[0]!.y, 12);
    expect(twiceArea(points)).toBeGreaterThan(0);
  });

  it('joins the lines at its ends', () => {
    const text = lineText('die', 50, -20, 50, 0) + splineText(quarter) + lineText('die', -30, 50, 0, 50);
    expect(drawn(readDxf(dxfFile(text))).lines).toHaveLength(1);
  });

  it('of fit points alone goes through them, and says that it is a reading', () => {
    const drawing = drawn(
      readDxf(
        dxfFile(
          fitText([
            [0, 0],
            [30, 40],
            [70, 40],
            [90, 0],
          ]),
        ),
      ),
    );
    for (const [x, y] of [
      [0, 0],
      [30, 40],
      [70, 40],
      [90, 0],
    ] as const)
      expect(Math.min(...drawing.lines[0]!.points.map((on) => Math.hypot(on.x - x, on.y - y)))).toBeLessThan(
        1e-9,
      );
    expect(drawing.issues.map(({ message }) => message)).toEqual([
      'The file gives only points of these, and they were taken as the smoothest curves through them: spline (1).',
    ]);
    // Hermite's cubic over a chord of 10 with slopes 1 and −1 rises to 10/8 + 10/8.
    const led = first(
      fitText(
        [
          [0, 0],
          [10, 0],
        ],
        0,
        [12, 0],
        [22, 1],
        [32, 0],
        [13, 0],
        [23, -1],
        [33, 0],
      ),
    );
    expect(Math.max(...led.map(({ y }) => y))).toBeCloseTo(2.5, 1);
  });

  it.each([
    ['too few knots', splineText({ ...quarter, knots: [0, 0, 1, 1] })],
    ['a weight of nothing', splineText({ ...quarter, weights: [1, 0, 1] })],
    ['a single fit point', fitText([[1, 1]])],
    ['no points', splineText({ ...quarter, controls: [] })],
  ])('is named as not readable: %s', (_, text) => {
    expect(refusal(readDxf(dxfFile(text)))).toContain('spline that cannot be read (1)');
  });
});

describe('an extrusion direction away from the eye', () => {
  const behind = [
    [210, 0],
    [220, 0],
    [230, -1],
  ] as const;

  it('changes left and right of what is placed in its own frame: arcs, circles and flat polylines', () => {
    // Arbitrary axis algorithm of the DXF reference, from memory: the x axis is that of the world turned round.
    const arc = first(
      groups([0, 'ARC'], [8, 'die'], [10, 10], [20, 0], [40, 5], [50, 0], [51, 90], ...behind),
    );
    expect(arc[0]!.x).toBeCloseTo(-15, 12);
    expect(arc.at(-1)!.x).toBeCloseTo(-10, 12);
    const bent = first(
      groups([0, 'LWPOLYLINE'], [90, 2], [70, 0], [10, -10], [20, 0], [42, 1], [10, 10], [20, 0], ...behind),
    );
    // A bulge of 1 is the lower half of a circle from left to right; seen from behind it runs from right to left.
    expect(bent[0]).toEqual({ x: 10, y: 0 });
    expect(Math.min(...bent.map(({ y }) => y))).toBeCloseTo(-10, 2);
    for (const { x, y } of bent) expect(Math.hypot(x, y)).toBeCloseTo(10, 9);
    const vertex = (x: number, y: number, flags = 0): string =>
      groups([0, 'VERTEX'], [10, x], [20, y], [70, flags]);
    const flat = groups([0, 'POLYLINE'], [66, 1], [70, 0], ...behind) + vertex(1, 2) + vertex(3, 4);
    expect(first(flat + groups([0, 'SEQEND']))).toEqual([
      { x: -1, y: 2 },
      { x: -3, y: 4 },
    ]);
  });

  it('leaves in place what is placed in the world: lines, splines, polylines in space', () => {
    const line = groups([0, 'LINE'], [10, 1], [20, 2], [11, 3], [21, 4], ...behind);
    expect(first(line)).toEqual([
      { x: 1, y: 2 },
      { x: 3, y: 4 },
    ]);
    const spaced =
      groups([0, 'POLYLINE'], [66, 1], [70, 8], ...behind) +
      groups(
        [0, 'VERTEX'],
        [10, 1],
        [20, 2],
        [70, 32],
        [0, 'VERTEX'],
        [10, 3],
        [20, 4],
        [70, 32],
        [0, 'SEQEND'],
      );
    expect(first(spaced)).toEqual([
      { x: 1, y: 2 },
      { x: 3, y: 4 },
    ]);
  });

  it('a polyline fitted with a curve is its curve, not the handles of it', () => {
    const vertex = (x: number, y: number, flags: number): string =>
      groups([0, 'VERTEX'], [10, x], [20, y], [70, flags]);
    const text =
      groups([0, 'POLYLINE'], [66, 1], [70, 4]) + vertex(0, 0, 8) + vertex(5, 99, 16) + vertex(9, 0, 8);
    expect(first(text + groups([0, 'SEQEND']))).toEqual([
      { x: 0, y: 0 },
      { x: 9, y: 0 },
    ]);
  });
});
