import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flushBasin } from '$src/core/section/shapes';
import { fromMillimetres } from '$src/core/units';
import { LARGEST_DRAWING, type ReadDrawing } from '$src/fromDrawing/drawing';
import { readDxf } from '$src/fromDrawing/readDxf';
import { readSvg } from '$src/fromDrawing/readSvg';
import { sectionFrom } from '$src/fromDrawing/sectionFrom';
import { likelyLines } from '$src/ui/tracing/chooseLines';
import { cut, cutText, place } from './mutations';
import { expectNothingShared, expectReadable, promptly } from './readable';

const SVG = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200">
  <defs><path id="unseen" d="M0 0H9"/></defs>
  <g id="die" transform="translate(10 20) rotate(3)">
    <path id="floor" d="M0 100 H355 c1 2 3 4 5 6 S9 9 12 12 Q1 2 3 4 T5 6 A5 5 0 0 1 9 9"/>
    <polyline id="roof" points="0,0 103,0 103,70 355,70"/>
    <rect x="1" y="2" width="30" height="4"/><line x1="0" y1="0" x2="9" y2="9"/>
    <text x="5" y="5">arm</text>
  </g>
</svg>`;

const pairs = (...list: readonly (readonly [number, string | number])[]): string =>
  list.map(([code, value]) => `${code}\n${value}\n`).join('');

/** A die whose curves are splines, by control points and by fit points, and parts of ellipses. */
const CURVES = pairs(
  [0, 'SPLINE'],
  [8, 'die'],
  [70, 12],
  [71, 2],
  ...[0, 0, 0, 1, 2, 2, 2].map((knot) => [40, knot] as const),
  ...[1, 0.7, 0.7, 1].map((weight) => [41, weight] as const),
  [10, 0],
  [20, 0],
  [10, 30],
  [20, 0],
  [10, 30],
  [20, 40],
  [10, 60],
  [20, 40],
  [0, 'SPLINE'],
  [70, 1],
  [71, 3],
  [12, 1],
  [22, 0],
  [11, 0],
  [21, 0],
  [11, 9],
  [21, 4],
  [11, 20],
  [21, -3],
  [0, 'ELLIPSE'],
  [10, 40],
  [20, 40],
  [11, 20],
  [21, 5],
  [40, 0.5],
  [41, 0],
  [42, 2],
  [230, -1],
  [0, 'CIRCLE'],
  [10, 4],
  [20, 4],
  [40, 3],
);

const DXF = pairs(
  [0, 'SECTION'],
  [2, 'HEADER'],
  [9, '$INSUNITS'],
  [70, 4],
  [0, 'ENDSEC'],
  [0, 'SECTION'],
  [2, 'ENTITIES'],
  [0, 'LINE'],
  [8, 'die'],
  [10, 0],
  [20, 0],
  [11, 355],
  [21, 0],
  [0, 'LWPOLYLINE'],
  [8, 'die'],
  [90, 4],
  [70, 0],
  [10, 0],
  [20, 95],
  [10, 103],
  [20, 95],
  [42, 0.5],
  [10, 103],
  [20, 30],
  [10, 355],
  [20, 30],
  [0, 'ARC'],
  [8, 'die'],
  [10, 50],
  [20, 50],
  [40, 10],
  [50, 0],
  [51, 90],
  [0, 'POLYLINE'],
  [8, 'x'],
  [66, 1],
  [70, 1],
  [0, 'VERTEX'],
  [10, 0],
  [20, 0],
  [0, 'VERTEX'],
  [10, 9],
  [20, 0],
  [0, 'VERTEX'],
  [10, 9],
  [20, 9],
  [0, 'SEQEND'],
  [0, 'TEXT'],
  [1, 'arm'],
  [0, 'ENDSEC'],
  [0, 'EOF'],
);

const dxf = (entities: string): string => `0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const blocks = (list: string): string => `0\nSECTION\n2\nBLOCKS\n${list}0\nENDSEC\n`;
const block = (name: string, inside: string): string =>
  pairs([0, 'BLOCK'], [2, name], [10, 1], [20, 2]) + inside + pairs([0, 'ENDBLK']);
const insert = (name: string, ...more: readonly (readonly [number, number])[]): string =>
  pairs([0, 'INSERT'], [8, 'die'], [2, name], [10, 5], [20, 6], ...more);

/** The same curves in the open and in blocks within blocks, turned, mirrored and repeated. */
const CURVED_DXF =
  blocks(
    block('arm', CURVES) +
      block('pair', insert('arm', [41, -1]) + insert('arm', [42, 3], [50, 30], [230, -1])),
  ) + dxf(CURVES + insert('pair', [70, 2], [71, 3], [44, 100], [45, 50], [50, 10]));

/** What becomes of a drawing on the page: read, lines chosen, laid into the die frame; each way round. */
function drawWith(read: ReadDrawing): void {
  if ('refused' in read) {
    expectReadable(read.refused);
    return;
  }
  if (read.issues.length > 0) expectReadable(read.issues);
  for (const { points } of read.lines) {
    expect(points.length).toBeGreaterThan(1);
    expect(points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
  }
  const before = flushBasin();
  const lines = [read.lines[0]!, read.lines.at(-1)!];
  likelyLines(read.lines);
  for (const quarterTurns of [0, 1] as const)
    for (const floor of lines)
      for (const roof of lines) {
        const placing = {
          metresPerUnit: read.unit ?? fromMillimetres(1),
          quarterTurns,
          isMirrored: quarterTurns === 1,
        };
        const { section, issues } = sectionFrom({ floor, roof, placing, mouth: 0.155, openTo: 0.1 }, before);
        if (section === null) expectReadable(issues);
        else if (issues.length > 0) expectReadable(issues);
      }
}

const cuts = fc.array(cut, { minLength: 1, maxLength: 3 });
const RUNS = Number(process.env['QUIETPOUR_FUZZ'] ?? 1);
const settings = (numRuns: number) => ({ numRuns: numRuns * RUNS, seed: RUNS > 1 ? Date.now() : 20268 });

/** One number of the text in place of another. */
const NUMBERS = [
  '0',
  '-1',
  '1e308',
  '-1e308',
  '1e-300',
  '1e999',
  'NaN',
  '',
  '1e15',
  '0.0000001',
  '360',
  '99999999999',
];
const numbers = fc.array(fc.tuple(place, fc.constantFrom(...NUMBERS)), { minLength: 1, maxLength: 4 });

function withNumbers(text: string, list: readonly (readonly [number, string])[]): string {
  return list.reduce((whole, [at, value]) => {
    const found = [...whole.matchAll(/-?\d+(\.\d+)?/g)];
    const { index, 0: old } = found[at % found.length]!;
    return whole.slice(0, index) + value + whole.slice(index + old.length);
  }, text);
}

describe.each([
  ['SVG', SVG, readSvg],
  ['DXF', DXF, readDxf],
  ['DXF with curves and blocks', CURVED_DXF, readDxf],
] as const)('thousands of broken %s drawings', (_, text, read) => {
  it('cut and filled as text: read or refused in words', () => {
    drawWith(read(text));
    fc.assert(
      fc.property(cuts, (list) => promptly(() => drawWith(read(list.reduce(cutText, text))))),
      settings(500),
    );
    expectNothingShared();
  });

  it('with other numbers: read or refused in words', () => {
    fc.assert(
      fc.property(numbers, (list) => promptly(() => drawWith(read(withNumbers(text, list))))),
      settings(300),
    );
  });
});

/** Drawings that are whole, but larger in one way than any drawing of a section. */
describe('drawings made to choke on', () => {
  const svg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`;
  const many = (count: number, one: (index: number) => string): string =>
    Array.from({ length: count }, (_, index) => one(index)).join('');
  const spike = (index: number): string => `L${index} ${index % 2 ? index : -index}`;

  it.each([
    ['elements in elements', () => readSvg(svg('<g>'.repeat(100_000) + '</g>'.repeat(100_000)))],
    ['elements that never close', () => readSvg(svg('<g>'.repeat(500_000)))],
    ['a path of a million points', () => readSvg(svg(`<path d="M0 0${'h1'.repeat(1_000_000)}"/>`))],
    ['a path that leaps at every point', () => readSvg(svg(`<path d="M0 0${many(60_000, spike)}"/>`))],
    [
      'a thousand lines, one of them endless',
      () => readSvg(svg(`${'<line x2="9"/>'.repeat(1000)}<path d="M0 0${'h1'.repeat(400_000)}"/>`)),
    ],
    [
      'a long transform over many lines',
      () =>
        readSvg(svg(`<g transform="${'scale(1)'.repeat(100_000)}">${'<line x2="9"/>'.repeat(20_000)}</g>`)),
    ],
    [
      'entities of its own',
      () => readSvg(`<!DOCTYPE svg [<!ENTITY a "${'b'.repeat(1000)}">]>${svg('&a;&a;')}`),
    ],
    ['an attribute of megabytes', () => readSvg(svg(`<line id="${'a'.repeat(4_000_000)}" x2="3"/>`))],
    ['more characters than a drawing has', () => readSvg(' '.repeat(LARGEST_DRAWING + 1))],
    [
      'lines that all meet',
      () =>
        readDxf(
          dxf(
            many(30_000, (index) =>
              pairs([0, 'LINE'], [10, index], [20, index % 3], [11, index + 1], [21, (index + 1) % 3]),
            ),
          ),
        ),
    ],
    [
      'lines that never meet',
      () =>
        readDxf(
          dxf(
            many(60_000, (index) =>
              pairs([0, 'LINE'], [10, 3 * index], [20, 0], [11, 3 * index + 1], [21, 0]),
            ),
          ),
        ),
    ],
    [
      'lines of one point',
      () => readDxf(dxf(`${pairs([0, 'LINE'], [8, 'a'])}${pairs([0, 'LINE'], [8, 'a'], [10, 1], [20, 1])}`)),
    ],
    [
      'vertices without end',
      () => readDxf(dxf(pairs([0, 'LWPOLYLINE'], [90, 2_000_000_000], [10, 0], [20, 0], [10, 5], [20, 0]))),
    ],
    [
      'a polyline of bulges',
      () =>
        readDxf(
          dxf(
            pairs([0, 'LWPOLYLINE'], [90, 20_000]) +
              many(20_000, (index) => pairs([10, index], [20, 0], [42, 3])),
          ),
        ),
    ],
    [
      'blocks within themselves',
      () => readDxf(blocks(block('a', insert('b')) + block('b', insert('a'))) + dxf(insert('a'))),
    ],
    [
      'a block copied a million times',
      () => readDxf(blocks(block('a', CURVES)) + dxf(insert('a', [70, 1000], [71, 1000]))),
    ],
    [
      'copies of copies of copies of nothing',
      () =>
        readDxf(
          blocks(
            many(16, (index) => block(`a${index}`, insert(`a${index + 1}`, [70, 4000]).repeat(50))) +
              block('a16', ''),
          ) + dxf(insert('a0')),
        ),
    ],
    [
      'blocks nested without end',
      () =>
        readDxf(
          blocks(many(50_000, (index) => block(`a${index}`, insert(`a${index + 1}`)))) + dxf(insert('a0')),
        ),
    ],
    [
      'a spline of a hundred thousand control points',
      () =>
        readDxf(
          dxf(
            pairs([0, 'SPLINE'], [71, 3]) +
              many(100_004, (index) => pairs([40, index])) +
              many(100_000, (index) => pairs([10, index], [20, index % 2])),
          ),
        ),
    ],
    [
      'a curve through a hundred thousand points',
      () =>
        readDxf(
          dxf(
            pairs([0, 'SPLINE'], [70, 1]) +
              many(100_000, (index) => pairs([11, index % 97], [21, index % 89])),
          ),
        ),
    ],
    [
      'splines of the highest degree that leap at every point',
      () =>
        readDxf(
          dxf(
            many(
              300,
              (spline) =>
                pairs([0, 'SPLINE'], [8, spline], [71, 11]) +
                many(412, (index) => pairs([40, index])) +
                many(400, (index) => pairs([10, index % 2 ? 1e6 : -1e6], [20, index])),
            ),
          ),
        ),
    ],
    [
      'splines that are all but corners',
      () =>
        readDxf(
          dxf(
            many(
              4000,
              (spline) =>
                pairs([0, 'SPLINE'], [8, spline], [71, 3]) +
                many(10, (index) => pairs([40, index < 4 ? 0 : index < 6 ? index : 9])) +
                many(6, (index) =>
                  pairs([10, index % 2 ? 1e3 : 0], [20, index], [41, index % 2 ? 1e9 : 1e-9]),
                ),
            ),
          ),
        ),
    ],
    [
      'ellipses by thousands, flat and endless',
      () =>
        readDxf(
          dxf(
            many(5000, (index) =>
              pairs(
                [0, 'ELLIPSE'],
                [8, index],
                [10, 0],
                [20, 0],
                [11, 1e300],
                [21, index],
                [40, 1e-300],
                [41, 1e300],
                [42, -1e300],
              ),
            ),
          ),
        ),
    ],
  ])('%s', (_, read) => {
    promptly(() => drawWith(read()));
  });
});
