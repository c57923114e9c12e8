import { describe, expect, it } from 'vitest';
import { flushBasin } from '$src/core/section/shapes';
import { fromDegrees, fromInches, fromMillimetres, toMillimetres } from '$src/core/units';
import { arcPoints, bulgePoints, cubicPoints } from '$src/fromDrawing/curves';
import type { Drawing, DrawnLine, ReadDrawing } from '$src/fromDrawing/drawing';
import { joined } from '$src/fromDrawing/joined';
import { type Placing, wallOf } from '$src/fromDrawing/placing';
import { readDxf } from '$src/fromDrawing/readDxf';
import { readSvg } from '$src/fromDrawing/readSvg';
import { sectionFrom } from '$src/fromDrawing/sectionFrom';
import { likelyLines, likelyPlace, sharpPlaces } from '$src/ui/tracing/chooseLines';

function drawn(read: ReadDrawing): Drawing {
  if ('refused' in read) throw new Error(read.refused[0]!.message);
  return read;
}
const refusal = (read: ReadDrawing): string => ('refused' in read ? read.refused[0]!.message : 'it was read');

/** Floor and roof of the flush basin in millimetres, as a person would draw them, y down. */
const SVG = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200">
  <script>throw new Error('run')</script>
  <defs><path id="unseen" d="M0 0H9"/></defs>
  <g id="die" transform="translate(10 20)">
    <path id="floor" d="M0 100 H355"/>
    <polyline id="roof" points="0,0 103,0 103,70 355,70"/>
    <text x="5" y="5">arm</text>
  </g>
</svg>`;

const millimetre: Placing = { metresPerUnit: fromMillimetres(1), quarterTurns: 0, isMirrored: false };

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
    [dxf('0\nCIRCLE\n8\nA\n10\n0\n20\n0\n40\n5\n'), 'circle (1)'],
  ])('is refused with its reason: %s', (text, reason) => {
    expect(refusal(readDxf(text))).toContain(reason);
  });
});

describe('curves', () => {
  it('end where they end, and an arc of half a turn is twice its radius wide', () => {
    const cubic = cubicPoints({ x: 0, y: 0 }, { x: 0, y: 1 }, { x: 2, y: 1 }, { x: 2, y: 0 });
    expect(cubic.at(-1)).toEqual({ x: 2, y: 0 });
    expect(cubic[7]).toEqual({ x: 1, y: 0.75 });
    const half = arcPoints({ x: 1, y: 1 }, 2, 0, Math.PI);
    expect(half[0]!.x - half.at(-1)!.x).toBeCloseTo(4, 12);
  });

  it('a bulge is the tangent of a quarter of the angle, positive to the right of the way', () => {
    const bulge = Math.tan(fromDegrees(90) / 4);
    const points = bulgePoints({ x: 0, y: 0 }, { x: 1, y: 1 }, bulge);
    for (const { x, y } of points) expect(Math.hypot(x, y - 1)).toBeCloseTo(1, 12);
    expect(bulgePoints({ x: 0, y: 0 }, { x: 1, y: 1 }, 0)).toEqual([{ x: 1, y: 1 }]);
  });

  it('lines of different layers stay apart, and a ring closes', () => {
    const line = (layer: string, ...points: [number, number][]): DrawnLine => ({
      layer,
      name: '',
      isClosed: false,
      points: points.map(([x, y]) => ({ x, y })),
    });
    expect(joined([line('a', [0, 0], [1, 0]), line('b', [1, 0], [2, 0])])).toHaveLength(2);
    const ring = joined([line('a', [0, 0], [1, 0]), line('a', [1, 1], [0, 0]), line('a', [1, 0], [1, 1])]);
    expect(ring).toHaveLength(1);
    expect(ring[0]!.isClosed).toBe(true);
  });
});

describe('a section from a drawing', () => {
  const before = flushBasin();
  const { lines } = drawn(readSvg(SVG));
  const choice = { floor: lines[0]!, roof: lines[1]!, placing: millimetre, mouth: 0.155, openTo: 0.103 };

  it('is the one that was drawn', () => {
    const { section, issues } = sectionFrom(choice, before);
    expect(issues).toEqual([]);
    expect(section!.floor).toEqual([
      { x: 0, y: 0 },
      { x: 0.355, y: 0 },
    ]);
    expect(section!.roof).toEqual([
      { x: 0, y: 0.1 },
      { x: 0.103, y: 0.1 },
      { x: 0.103, y: 0.03 },
      { x: 0.355, y: 0.03 },
    ]);
    expect(section!.openings).toEqual([{ wall: 'roof', from: 0, to: 1 }]);
    expect(section!.regions.map(({ end }) => end)).toEqual([0.155, 0.355]);
    expect(section!.regions[1]!.width).toBe(before.regions.at(-1)!.width);
  });

  it('is scaled, turned and mirrored into place', () => {
    const turnedText = SVG.replace('translate(10 20)', 'translate(100 0) rotate(90) scale(0.5)');
    const turned = drawn(readSvg(turnedText)).lines;
    const placing: Placing = { metresPerUnit: fromMillimetres(2), quarterTurns: 1, isMirrored: false };
    const { section, issues } = sectionFrom(
      { ...choice, floor: turned[0]!, roof: turned[1]!, placing },
      before,
    );
    expect(issues).toEqual([]);
    expect(section!.roof.map(({ x }) => Math.round(toMillimetres(x)))).toEqual([0, 103, 103, 355]);
    const mirroredText = SVG.replace('translate(10 20)', 'scale(-1 1)');
    const mirrored = drawn(readSvg(mirroredText)).lines;
    const back = sectionFrom(
      { ...choice, floor: mirrored[0]!, roof: mirrored[1]!, placing: { ...millimetre, isMirrored: true } },
      before,
    );
    expect(back.section!.roof).toEqual(sectionFrom(choice, before).section!.roof);
  });

  it('comes from one closed outline too: its lower side is the floor, its upper the roof', () => {
    const outline = drawn(readSvg('<svg><path d="M0 100H355V70H103V0H0Z"/></svg>')).lines[0]!;
    const { section, issues } = sectionFrom({ ...choice, floor: outline, roof: outline }, before);
    expect(issues).toEqual([]);
    expect(section!.roof).toEqual(sectionFrom(choice, before).section!.roof);
    const otherWay = drawn(readSvg('<svg><path d="M103 70V0H0V100H355V70Z"/></svg>')).lines[0]!;
    expect(sectionFrom({ ...choice, floor: otherWay, roof: otherWay }, before).section!.floor).toEqual(
      section!.floor,
    );
  });

  it('thins what is drawn with more points than it needs', () => {
    const fine = Array.from(
      { length: 2001 },
      (_, index) => `${index * 0.1775},${100 + Math.sin(index / 300)}`,
    ).join(' ');
    const floor = drawn(readSvg(`<svg><polyline points="${fine}"/></svg>`)).lines[0]!;
    const { section } = sectionFrom(
      {
        ...choice,
        floor,
        roof: { ...lines[1]!, points: lines[1]!.points.map(({ x, y }) => ({ x: x - 10, y: y + 20 })) },
      },
      before,
    );
    expect(section!.floor.length).toBeGreaterThan(4);
    expect(section!.floor.length).toBeLessThanOrEqual(120);
  });

  it('explains a line that runs back on itself, with its place', () => {
    const overhang = drawn(readSvg('<svg><path id="hook" d="M0 0H200L150 20H355"/></svg>')).lines[0]!;
    const wall = wallOf(overhang, 'floor', millimetre);
    if (!('issues' in wall)) throw new Error('It was taken.');
    expect(wall.issues[0]!.message).toBe('“hook” runs back on itself 150 mm along, -20 mm up.');
    expect(wall.issues[0]!.at!.x).toBeCloseTo(0.15, 9);
    expect(wall.issues[0]!.remedy).toContain('without the overhang');
  });

  it('explains a floor and roof that do not lie over each other, or are swapped', () => {
    const short = { ...lines[1]!, points: lines[1]!.points.slice(0, 2) };
    expect(sectionFrom({ ...choice, roof: short }, before).issues[0]!.message).toContain(
      'do not lie over each other',
    );
    const swapped = sectionFrom({ ...choice, floor: lines[1]!, roof: lines[0]! }, before);
    expect(swapped.issues.length).toBeGreaterThan(0);
    expect(swapped.issues[0]!.remedy).not.toBe('');
  });

  it('cuts off what stands over at the ends, and says how much', () => {
    const long = {
      ...lines[0]!,
      points: lines[0]!.points.map(({ x, y }) => ({ x: x > 100 ? x + 12 : x, y })),
    };
    const { section, cutOff, issues } = sectionFrom({ ...choice, floor: long }, before);
    expect(issues).toEqual([]);
    expect(cutOff).toBeCloseTo(0.012, 9);
    expect(section!.floor.at(-1)!.x).toBeCloseTo(0.355, 9);
  });

  it('finds likely walls and places for a person to correct', () => {
    expect(likelyLines(lines)).toEqual({ floor: 0, roof: 1 });
    const unnamed = lines.toReversed().map((line, index) => ({ ...line, layer: '', name: `line ${index}` }));
    expect(likelyLines(unnamed)).toEqual({ floor: 1, roof: 0 });
    const curve = drawn(readSvg('<svg><path d="M0 0H50V10C80 10 90 20 120 20"/></svg>')).lines[0]!;
    expect(sharpPlaces(curve.points)).toEqual([50, 50]);
    expect(likelyPlace(0.09, [0, 0.103, 0.103, 0.355], 0.355)).toBe(0.103);
    expect(likelyPlace(0.2004, [0, 0.355], 0.355)).toBeCloseTo(0.2, 12);
  });

  it('explains an upright line', () => {
    const upright = drawn(readSvg('<svg><path d="M5 0V100"/></svg>')).lines[0]!;
    expect(sectionFrom({ ...choice, floor: upright }, before).issues[0]!.message).toContain(
      'no length along the die',
    );
  });
});
