import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '$src/core/section/section';
import { fromDegrees, fromMillimetres, toMillimetres } from '$src/core/units';
import { fewestPoints } from '$src/fromDrawing/fewestPoints';
import { wallOf } from '$src/fromDrawing/placing';
import { readDxf } from '$src/fromDrawing/readDxf';
import { drawn } from './drawn';
import { blockText, dxfFile, groups, insertText, lineText } from './dxfText';

/** From a point to the stretch between two others, by looking along it. */
function apart(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}

const isWithin = (points: readonly Point[], kept: readonly number[], stray: number): boolean =>
  kept
    .slice(1)
    .every((to, index) =>
      points
        .slice(kept[index]! + 1, to)
        .every((point) => apart(point, points[kept[index]!]!, points[to]!) <= stray),
    );

/** Fewest points by trying every choice. */
function byTrying(points: readonly Point[], stray: number): number {
  const inner = points.length - 2;
  let fewest = points.length;
  for (let choice = 0; choice < 2 ** inner; choice++) {
    const kept = [
      0,
      ...Array.from({ length: inner }, (_, bit) => bit + 1).filter((bit) => choice & (1 << (bit - 1))),
      points.length - 1,
    ];
    if (kept.length < fewest && isWithin(points, kept, stray)) fewest = kept.length;
  }
  return fewest;
}

const lines = fc
  .array(fc.tuple(fc.constantFrom(0, 0.2, 1, 3), fc.integer({ min: -8, max: 8 })), {
    minLength: 3,
    maxLength: 9,
  })
  .map((steps) => {
    let x = 0;
    return steps.map(([step, height]) => {
      x += step;
      return { x, y: height / 4 };
    });
  });

describe('the fewest points of a line', () => {
  it('are as few as the best of all choices, none further off than is allowed', () => {
    fc.assert(
      fc.property(lines, fc.constantFrom(0.1, 0.3, 1), (points, stray) => {
        const kept = fewestPoints(points, stray);
        expect(kept.length).toBe(byTrying(points, stray));
        const places = kept.map((point) => points.indexOf(point));
        expect(isWithin(points, places, stray + 1e-12)).toBe(true);
      }),
      { seed: 4117, numRuns: 400 },
    );
  });

  it('are found in little time of a line with very many', () => {
    const points = Array.from({ length: 5000 }, (_, index) => ({ x: index, y: Math.sin(index / 40) * 30 }));
    const start = performance.now();
    expect(fewestPoints(points, 0.1).length).toBeLessThan(1000);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

const placing = { metresPerUnit: fromMillimetres(1), quarterTurns: 0, isMirrored: false } as const;

/** The fewest chords of an arc that stray from it by a tenth of a millimetre at the most. */
const chordsOf = (radius: number, sweep: number): number =>
  Math.ceil(sweep / (2 * Math.acos(1 - 0.1 / radius)));

const polyline = (vertices: readonly (readonly [number, number, number?])[]): string =>
  groups(
    [0, 'LWPOLYLINE'],
    [8, 'cavity'],
    [90, vertices.length],
    [70, 0],
    ...vertices.flatMap(([x, y, bulge = 0]) => [[10, x] as const, [20, y] as const, [42, bulge] as const]),
  );

/** A wall that goes down a step by a fillet of this radius, as a bulge and as an ARC between lines. */
const asBulge = (radius: number): string =>
  polyline([
    [0, 2 * radius],
    [50, 2 * radius],
    [50, radius, Math.tan(Math.PI / 8)],
    [50 + radius, 0],
    [200, 0],
    [300, 0],
  ]);
const asArc = (radius: number): string =>
  lineText('cavity', 0, 2 * radius, 50, 2 * radius) +
  lineText('cavity', 50, 2 * radius, 50, radius) +
  groups([0, 'ARC'], [8, 'cavity'], [10, 50 + radius], [20, radius], [40, radius], [50, 180], [51, 270]) +
  lineText('cavity', 50 + radius, 0, 200, 0) +
  lineText('cavity', 200, 0, 300, 0);

describe.each([
  ['a bulge', asBulge],
  ['an ARC', asArc],
])('a fillet drawn as %s', (_, text) => {
  it.each([2, 8, 20, 50])(
    'of %d mm radius takes as few points as stay within 0.1 mm, or one more',
    (radius) => {
      const { lines: found } = drawn(readDxf(dxfFile(text(radius))));
      expect(found).toHaveLength(1);
      const wall = wallOf(found[0]!, 'roof', placing);
      if (!('points' in wall)) throw new Error(wall.issues[0]!.message);
      // Both ends, the edge of the step, and the corners of the chords; nothing where two lines run on straight.
      const fewest = 3 + chordsOf(radius, fromDegrees(90)) + 1;
      expect(wall.points.length).toBeGreaterThanOrEqual(fewest - 1);
      expect(wall.points.length).toBeLessThanOrEqual(fewest + 1);
      // The long flat keeps its height and its place.
      expect(toMillimetres(wall.points.at(-2)!.x)).toBeCloseTo(50 + radius, 9);
      expect(wall.points.at(-2)!.y).toBeCloseTo(0, 12);
      const centre = { x: 50 + radius, y: radius };
      for (let turn = 180; turn <= 270; turn += 0.5) {
        const on = {
          x: fromMillimetres(centre.x + radius * Math.cos(fromDegrees(turn))),
          y: fromMillimetres(centre.y + radius * Math.sin(fromDegrees(turn))),
        };
        const off = wall.points.slice(1).map((to, index) => apart(on, wall.points[index]!, to));
        expect(toMillimetres(Math.min(...off))).toBeLessThanOrEqual(0.1);
      }
    },
  );
});

it('a fillet in a block that is inserted ten times as large is cut as finely as any', () => {
  const block = blockText('die', asBulge(5).replaceAll('cavity', '0'));
  const [small, large] = [insertText('die'), insertText('die', [41, 10], [42, 10])];
  const { lines: found } = drawn(readDxf(dxfFile(small + large, block)));
  const [first, second] = found.map((line) => wallOf(line, 'roof', placing));
  if (!first || !second || !('points' in first) || !('points' in second)) throw new Error('No walls.');
  expect(second.points.length).toBeLessThanOrEqual(3 + chordsOf(50, fromDegrees(90)) + 1);
  expect(second.points.length).toBeGreaterThan(first.points.length);
});

it('a drawing of very many arcs is cut less finely, and says so', () => {
  const arc = groups([0, 'ARC'], [8, 'cavity'], [10, 0], [20, 0], [40, 8], [50, 0], [51, 90]);
  const block = blockText('die', arc);
  const read = (count: number) =>
    drawn(readDxf(dxfFile(insertText('die', [70, count], [44, 20]), block))).issues.map(
      ({ message }) => message,
    );
  expect(read(400)).toEqual([]);
  expect(read(1500)[0]).toContain('may stray 0.01 mm more');
});
