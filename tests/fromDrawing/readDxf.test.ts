import { describe, expect, it } from 'vitest';
import { fromInches, fromMillimetres } from '$src/core/units';
import { readDxf } from '$src/fromDrawing/readDxf';
import { drawn, refusal } from './drawn';

const dxf = (entities: string, units = 4): string =>
  `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n${units}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const lineEntity = (layer: string, x1: number, y1: number, x2: number, y2: number): string =>
  `0\nLINE\n8\n${layer}\n10\n${x1}\n20\n${y1}\n30\n0\n11\n${x2}\n21\n${y2}\n31\n0\n`;
const polyEntity = (layer: string, points: readonly (readonly number[])[], isClosed = false): string =>
  `0\nLWPOLYLINE\n8\n${layer}\n90\n${points.length}\n70\n${isClosed ? 1 : 0}\n${points
    .map(([x, y, bulge]) => `10\n${x}\n20\n${y}\n${bulge ? `42\n${bulge}\n` : ''}`)
    .join('')}`;

describe('a DXF drawing', () => {
  it('gives polylines by layer, lines joined end to end, and its unit', () => {
    const text = dxf(
      polyEntity('FLOOR', [
        [0, 0],
        [355, 0],
      ]) +
        lineEntity('ROOF', 103, 30, 355, 30) +
        lineEntity('ROOF', 0, 100, 103, 100) +
        lineEntity('ROOF', 103, 30, 103, 100),
    );
    const { lines, unit } = drawn(readDxf(text));
    expect(lines.map(({ layer, points }) => [layer, points.length])).toEqual([
      ['FLOOR', 2],
      ['ROOF', 4],
    ]);
    expect(unit).toBeCloseTo(fromMillimetres(1), 15);
    expect(
      drawn(
        readDxf(
          dxf(
            polyEntity('A', [
              [0, 0],
              [1, 0],
            ]),
            1,
          ),
        ),
      ).unit,
    ).toBeCloseTo(fromInches(1), 15);
    expect(
      drawn(
        readDxf(
          dxf(
            polyEntity('A', [
              [0, 0],
              [1, 0],
            ]),
            0,
          ),
        ),
      ).unit,
    ).toBeNull();
  });

  it('bends polylines by their bulge, and takes arcs', () => {
    const half = drawn(
      readDxf(
        dxf(
          polyEntity('A', [
            [-10, 0, 1],
            [10, 0],
          ]),
        ),
      ),
    ).lines[0]!.points;
    for (const { x, y } of half) expect(Math.hypot(x, y)).toBeCloseTo(10, 9);
    expect(Math.min(...half.map(({ y }) => y))).toBeCloseTo(-10, 1);
    const arc = dxf('0\nARC\n8\nA\n10\n0\n20\n0\n30\n0\n40\n5\n50\n0\n51\n90\n');
    const { points } = drawn(readDxf(arc)).lines[0]!;
    expect(points[0]!.x).toBeCloseTo(5, 9);
    expect(points.at(-1)!.y).toBeCloseTo(5, 9);
  });

  it.each([
    ['nothing of a drawing', 'not readable as DXF'],
    [dxf('0\nTEXT\n8\nA\n10\n0\n20\n0\n40\n5\n'), 'text (1)'],
  ])('is refused with its reason: %s', (text, reason) => {
    expect(refusal(readDxf(text))).toContain(reason);
  });
});
