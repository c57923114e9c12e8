import { expect, test } from 'vitest';
import { flushBasin } from '$src/core/section/shapes';
import { cornerAdded } from '$src/ui/section/cornerAdded';
import { wrongCorners } from '$src/ui/section/cornerNames';

/** Floor 0 to 355 mm in one piece; roof with a step at 103 mm. */
const section = flushBasin();

test('after the chosen corner, in the middle of its piece, on the grid, and it is chosen next', () => {
  const { section: next, code } = cornerAdded(section, 'R1', 0.01);
  const [a, b] = [section.roof[0]!, section.roof[1]!];
  expect(code).toBe('R2');
  expect(next.roof).toHaveLength(section.roof.length + 1);
  expect(Math.abs(next.roof[1]!.x - (a.x + b.x) / 2)).toBeLessThanOrEqual(0.005 + 1e-12);
  expect(next.roof[1]!.x * 100).toBeCloseTo(Math.round(next.roof[1]!.x * 100), 9);
});

test('after the last corner of a line there is no piece: it goes before it', () => {
  const last = section.roof.length;
  expect(cornerAdded(section, `R${last}`, 0.001).code).toBe(`R${last}`);
});

test.each([null, 'level', 'mouth'])('on the longest piece of floor when %s is chosen', (chosen) => {
  const stepped = {
    ...section,
    floor: [
      { x: 0, y: 0 },
      { x: 0.105, y: 0 },
      { x: 0.355, y: 0 },
    ],
  };
  const { section: next, code } = cornerAdded(stepped, chosen, 0.001);
  expect(code).toBe('F3');
  expect(next.floor[2]).toEqual({ x: 0.23, y: 0 });
});

test('issues that point at corners give their codes, others none', () => {
  const at = (path: string) => ({ path, message: 'It is wrong.', remedy: 'Mend it.' });
  expect(wrongCorners([at('floor.0'), at('roof.3.y'), at('mouth')])).toEqual(new Set(['F1', 'R4']));
});
