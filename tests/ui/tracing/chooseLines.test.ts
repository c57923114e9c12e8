import { expect, it } from 'vitest';
import { readSvg } from '$src/fromDrawing/readSvg';
import { likelyLines, likelyPlace, sharpPlaces } from '$src/ui/tracing/chooseLines';
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
