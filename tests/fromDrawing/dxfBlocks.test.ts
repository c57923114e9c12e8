import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '$src/core/section/section';
import { readDxf } from '$src/fromDrawing/readDxf';
import { drawn, refusal } from './drawn';
import { blockText, dxfFile, groups, insertText, lineText, splineText } from './dxfText';

// Group codes are those of the DXF reference, BLOCKS section and INSERT, from memory.

const lines = (entities: string, blocks: string) => drawn(readDxf(dxfFile(entities, blocks))).lines;

const near = (found: readonly Point[], expected: readonly Point[]): void => {
  expect(found).toHaveLength(expected.length);
  for (const [index, { x, y }] of expected.entries()) {
    expect(found[index]!.x).toBeCloseTo(x, 8);
    expect(found[index]!.y).toBeCloseTo(y, 8);
  }
};

/** From a point to a line of straight pieces. */
const offFrom = (line: readonly Point[], p: Point): number =>
  Math.min(
    ...line.slice(1).map((b, index) => {
      const a = line[index]!;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1);
      const share = Math.min(1, Math.max(0, along));
      return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
    }),
  );

const WALL = lineText('0', 1, 1, 3, 1);

describe('an INSERT', () => {
  it('sets the base point of its block down where it says, scaled and turned', () => {
    const text = insertText('wall', [10, 100], [20, 50], [41, 2], [42, -3], [50, 90]);
    // (1, 1) and (3, 1) from base (1, 0): (0, 1), (2, 1); scaled (0, −3), (4, −3); turned (3, 0), (3, 4). The first 10 and 20 count.
    const [line] = lines(text.replace('10\n0\n20\n0\n', ''), blockText('WALL', WALL, [1, 0]));
    near(line!.points, [
      { x: 103, y: 50 },
      { x: 103, y: 54 },
    ]);
    expect(line!.layer).toBe('die');
  });

  it('keeps the layer of what is not on layer 0 of its block', () => {
    const found = lines(insertText('wall'), blockText('wall', lineText('roof', 0, 0, 1, 0)));
    expect(found[0]!.layer).toBe('roof');
  });

  it('repeats in rows and columns, whose spacing turns with it and is not scaled', () => {
    const array = [
      [70, 2],
      [71, 3],
      [44, 10],
      [45, 20],
      [50, 90],
      [41, 2],
    ] as const;
    const found = lines(insertText('wall', ...array), blockText('wall', lineText('0', 0, 0, 1, 0)));
    const starts = found.map(({ points }) => `${Math.round(points[0]!.x) + 0} ${Math.round(points[0]!.y)}`);
    expect(starts.sort()).toEqual(['-20 0', '-20 10', '-40 0', '-40 10', '0 0', '0 10'].sort());
  });

  it('goes through blocks within blocks, the inner first', () => {
    const outer = insertText('wall', [41, 2]).replace('10\n0\n20\n0\n', '10\n5\n20\n0\n');
    const blocks = blockText('outer', outer) + blockText('wall', WALL);
    const [line] = lines(insertText('outer', [50, 90]), blocks);
    near(line!.points, [
      { x: -1, y: 7 },
      { x: -1, y: 11 },
    ]);
    expect(line!.layer).toBe('die');
  });

  it('seen from behind has left and right changed, as a whole', () => {
    const [line] = lines(
      insertText('wall', [50, 90], [210, 0], [220, 0], [230, -1]),
      blockText('wall', WALL),
    );
    near(line!.points, [
      { x: 1, y: 1 },
      { x: 1, y: 3 },
    ]);
  });

  it('lays curves as it lays their control points (affine invariance of B-splines)', () => {
    // The NURBS Book, section 4.2 (from memory); on the file as a whole, mirrored and unevenly scaled too.
    const coordinate = fc.integer({ min: -50, max: 50 });
    const scale = fc.constantFrom(-3, -1, -0.5, 0.5, 1, 4);
    const controls = fc.array(fc.tuple(coordinate, coordinate), { minLength: 4, maxLength: 4 });
    const place = fc.tuple(coordinate, coordinate, scale, scale, fc.integer({ min: -360, max: 360 }));
    fc.assert(
      fc.property(controls, place, (list, [x, y, scaleX, scaleY, degrees]) => {
        fc.pre(list.some(([cx, cy]) => cx !== list[0]![0] || cy !== list[0]![1]));
        const spline = { degree: 3, knots: [0, 0, 0, 0, 1, 1, 1, 1], controls: list, weights: [1, 2, 3, 1] };
        const own = lines(splineText(spline), '')[0]!.points;
        const text = groups(
          [0, 'INSERT'],
          [2, 'b'],
          [10, x],
          [20, y],
          [41, scaleX],
          [42, scaleY],
          [50, degrees],
        );
        const angle = (degrees * Math.PI) / 180;
        const laid = own.map((point) => ({
          x: x + scaleX * point.x * Math.cos(angle) - scaleY * point.y * Math.sin(angle),
          y: y + scaleX * point.x * Math.sin(angle) + scaleY * point.y * Math.cos(angle),
        }));
        const found = lines(text, blockText('b', splineText(spline)))[0]!.points;
        // All points lie on the curve; how many there are goes with its size, since chords stray a quarter of a micrometre.
        const largest = Math.max(Math.abs(scaleX), Math.abs(scaleY));
        for (const point of laid) expect(offFrom(found, point)).toBeLessThan(0.0003);
        for (const point of found) expect(offFrom(laid, point)).toBeLessThan(0.0003 * Math.max(1, largest));
      }),
      { seed: 20272, numRuns: 100 },
    );
  });

  it('is named where its block is missing, and what it holds is counted where it is no line', () => {
    const both = insertText('gone') + insertText('wall', [70, 3]);
    const { issues } = drawn(
      readDxf(dxfFile(both, blockText('wall', WALL + groups([0, 'TEXT'], [1, 'arm'])))),
    );
    expect(issues.map(({ message }) => message)).toEqual([
      'Passed over, because they are no lines: insert of block “GONE”, which is missing (1), text (3).',
    ]);
  });
});

describe('blocks that would never end', () => {
  it.each([
    ['itself', blockText('a', insertText('a')), 'Block “A” of the drawing is placed within itself.'],
    [
      'itself by way of another',
      blockText('a', insertText('b')) + blockText('B', insertText('A')),
      'Block “A” of the drawing is placed within itself.',
    ],
    [
      'a million copies',
      blockText('a', insertText('b', [70, 1000], [71, 1000])) + blockText('b', WALL),
      'With the copies of block “B” the drawing has more than 5000 pieces',
    ],
    [
      'copies of copies of nothing',
      Array.from({ length: 12 }, (_, index) =>
        blockText(index === 0 ? 'a' : `a${index}`, insertText(`a${index + 1}`, [70, 60])),
      ).join('') + blockText('a12', ''),
      'the drawing has more than 5000 pieces',
    ],
    [
      'forty levels',
      Array.from({ length: 40 }, (_, index) =>
        blockText(index === 0 ? 'a' : `a${index}`, insertText(`a${index + 1}`)),
      ).join(''),
      'is nested deeper than in any drawing',
    ],
  ])('are refused in words: %s', (_, blocks, message) => {
    expect(refusal(readDxf(dxfFile(insertText('a'), blocks)))).toContain(message);
  });

  it('are no matter where nothing inserts them', () => {
    expect(lines(WALL, blockText('a', insertText('a')))).toHaveLength(1);
  });

  it('are refused for the points of their curves too', () => {
    const many = Array.from({ length: 4000 }, (_, index) => [index, index % 7] as const);
    const knots = [0, ...Array.from({ length: 4000 }, (_, index) => index), 3999];
    const block = blockText('a', splineText({ degree: 1, knots, controls: many }));
    expect(refusal(readDxf(dxfFile(insertText('a', [70, 200]), block)))).toContain('more than 100000 points');
  });
});
