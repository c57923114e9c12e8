import { expect, it } from 'vitest';
import { readSvg } from '$src/fromDrawing/readSvg';
import { likelyLines, likelyPlace, sharpPlaces } from '$src/ui/tracing/chooseLines';
import { likelyBasin } from '$src/ui/tracing/likelyBasin';
import { drawn, SVG } from '../../fromDrawing/drawn';

it('finds likely walls and places for a person to correct', () => {
  const { lines } = drawn(readSvg(SVG));
  expect(likelyLines(lines)).toEqual({ floor: 0, roof: 1 });
  const unnamed = lines.toReversed().map((line, index) => ({ ...line, layer: '', name: `line ${index}` }));
  expect(likelyLines(unnamed)).toEqual({ floor: 1, roof: 0 });
  const curve = drawn(readSvg('<svg><path d="M0 0H50V10C80 10 90 20 120 20"/></svg>')).lines[0]!;
  expect(sharpPlaces(curve.points)).toEqual([50, 50]);
  expect(likelyPlace(0.09, [0, 0.103, 0.103, 0.355], 0.355)).toBe(0.103);
  expect(likelyPlace(0.2004, [0, 0.355], 0.355)).toBeCloseTo(0.2, 12);
});

const points = (...xy: readonly (readonly [number, number])[]) =>
  xy.map(([x, y]) => ({ x: x / 1000, y: y / 1000 }));

it('reads the basin from the steps of an outline', () => {
  const flat = points([0, 0], [300, 0]);
  // Down at the rim, and down again where the die begins; what tapers after that is no step.
  const stepped = points([0, 85], [60, 85], [60, 42], [110, 42], [110, 30], [140, 30], [170, 26], [300, 18]);
  expect(likelyBasin(flat, stepped)).toEqual({ rim: 0.06, mouth: 0.11 });
  // One step of the roof may be the rim of a roof that reaches back: the mouth is not told.
  expect(likelyBasin(flat, points([0, 95], [103, 95], [103, 30], [300, 30]))).toEqual({
    rim: 0.103,
    mouth: null,
  });
  // A pit: the floor comes up where the die begins, and the roof down.
  const pit = likelyBasin(
    points([0, -25], [120, -25], [120, 0], [300, 0]),
    points([0, 60], [120, 60], [120, 30], [300, 30]),
  );
  expect(pit).toEqual({ rim: 0.12, mouth: 0.12 });
  // What goes up at the die end is its end wall.
  expect(likelyBasin(points([0, 0], [300, 0], [300, 20]), stepped)).toEqual({ rim: 0.06, mouth: 0.11 });
  // A step drawn with draft, and no step at all.
  expect(likelyBasin(flat, points([0, 90], [50, 90], [55, 40], [100, 40], [102, 25], [300, 25]))).toEqual({
    rim: 0.055,
    mouth: 0.102,
  });
  expect(likelyBasin(flat, points([0, 40], [300, 20]))).toEqual({ rim: null, mouth: null });
});
