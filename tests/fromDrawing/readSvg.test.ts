import { describe, expect, it } from 'vitest';
import { fromInches, fromMillimetres } from '$src/core/units';
import { readSvg } from '$src/fromDrawing/readSvg';
import { drawn, refusal, SVG } from './drawn';

describe('an SVG drawing', () => {
  const drawing = drawn(readSvg(SVG));

  it('gives its lines by group and name, in place, y up, and its scale', () => {
    expect(drawing.lines.map(({ layer, name }) => [layer, name])).toEqual([
      ['die', 'floor'],
      ['die', 'roof'],
    ]);
    expect(drawing.lines[0]!.points).toEqual([
      { x: 10, y: -120 },
      { x: 365, y: -120 },
    ]);
    expect(drawing.unit).toBeCloseTo(fromMillimetres(1), 15);
  });

  it('says what it passed over, and runs nothing', () => {
    expect(drawing.issues.map(({ message }) => message)).toEqual([
      'Passed over, because they are no lines: text (1).',
    ]);
  });

  it.each([
    ['<svg width="10px" viewBox="0 0 10 10"><line x1="0" y1="0" x2="1" y2="0"/></svg>', null],
    ['<svg width="2in" viewBox="0 0 100 50"><line x1="0" y1="0" x2="1" y2="0"/></svg>', fromInches(0.02)],
    ['<svg width="5cm" viewBox="0 0 100 50"><line x1="0" y1="0" x2="1" y2="0"/></svg>', fromMillimetres(0.5)],
  ])('tells its scale only when it has one: %s', (text, unit) => {
    const found = drawn(readSvg(text)).unit;
    if (unit === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(unit, 12);
  });

  it('flattens curves and arcs to within a thousandth of their size', () => {
    const { points, isClosed } = drawn(
      readSvg('<svg><path d="M50 0 A50 50 0 0 1 -50 0 A50 50 0 0 1 50 0 Z"/></svg>'),
    ).lines[0]!;
    expect(isClosed).toBe(true);
    for (const { x, y } of points) expect(Math.abs(Math.hypot(x, y) - 50)).toBeLessThan(0.05);
  });

  it('nests transforms, and takes rectangles, polygons and several pieces of a path', () => {
    const text =
      '<svg><g transform="scale(2)"><g transform="translate(1 1)"><rect width="3" height="1"/></g></g><polygon points="0,0 1,0 1,1"/><path d="M0 0h1M5 5h1"/></svg>';
    const { lines } = drawn(readSvg(text));
    expect(lines.map(({ isClosed }) => isClosed)).toEqual([true, true, false, false]);
    expect(lines[0]!.points[2]).toEqual({ x: 8, y: -4 });
  });

  it.each([
    ['<svg><path d="M0 0"', 'not readable as SVG'],
    ['<html></html>', 'no SVG drawing'],
    ['<svg><text>a</text></svg>', 'no line that could be a floor or a roof'],
    ['<!DOCTYPE svg [<!ENTITY a "x">]><svg><path d="&a;"/></svg>', 'not readable as SVG'],
    ['<svg><path d="M0 0 L nonsense"/></svg>', 'path that cannot be read (1)'],
  ])('is refused with its reason: %s', (text, reason) => {
    expect(refusal(readSvg(text))).toContain(reason);
  });
});
