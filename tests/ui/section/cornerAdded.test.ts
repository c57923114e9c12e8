import { expect, test } from 'vitest';
import { flushBasin } from '$src/core/section/shapes';
import { cornerAdded } from '$src/ui/section/cornerAdded';
import { wrongCorners } from '$src/ui/section/cornerNames';
import { endsOf, pieceToSplit } from '$src/ui/section/pieceToSplit';

/** Floor 0 to 355 mm in one piece; roof with a step at 103 mm. */
const section = flushBasin();

test('in the middle of the piece, on the grid, and it is told where', () => {
  const { section: next, code, words } = cornerAdded(section, { line: 'roof', index: 0 }, 0.01);
  const [a, b] = [section.roof[0]!, section.roof[1]!];
  expect(code).toBe('R2');
  expect(words).toContain('Point R2 added midway between R1 and R3.');
  expect(next.roof).toHaveLength(section.roof.length + 1);
  expect(Math.abs(next.roof[1]!.x - (a.x + b.x) / 2)).toBeLessThanOrEqual(0.005 + 1e-12);
  expect(next.roof[1]!.x * 100).toBeCloseTo(Math.round(next.roof[1]!.x * 100), 9);
});

test('the piece is the one after the chosen corner; after the last of a line there is none, and it is the one before', () => {
  expect(endsOf(pieceToSplit(section, 'R1'))).toBe('R1 and R2');
  const last = section.roof.length;
  expect(endsOf(pieceToSplit(section, `R${last}`))).toBe(`R${last - 1} and R${last}`);
});

test.each([null, 'level', 'mouth'])('it is the longest piece of floor when %s is chosen', (chosen) => {
  const stepped = {
    ...section,
    floor: [
      { x: 0, y: 0 },
      { x: 0.105, y: 0 },
      { x: 0.355, y: 0 },
    ],
  };
  const piece = pieceToSplit(stepped, chosen);
  expect(endsOf(piece)).toBe('F2 and F3');
  const { section: next, code } = cornerAdded(stepped, piece, 0.001);
  expect(code).toBe('F3');
  expect(next.floor[2]).toEqual({ x: 0.23, y: 0 });
});

test('issues that point at corners give their codes, others none', () => {
  const at = (path: string) => ({ path, message: 'It is wrong.', remedy: 'Mend it.' });
  expect(wrongCorners([at('floor.0'), at('roof.3.y'), at('mouth')])).toEqual(new Set(['F1', 'R4']));
});
