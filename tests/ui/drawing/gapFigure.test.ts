import { expect, test } from 'vitest';
import { gapFigure } from '$src/ui/drawing/gapFigure';

test('a figure stands at the right of the middle of its line', () => {
  expect(gapFigure(100, { from: 0, to: 80 }, '70', [])).toEqual({ side: 'right', y: 40 });
});

test('it gives way to a handle at its right, and to handles at both sides by going up or down', () => {
  expect(gapFigure(100, { from: 0, to: 80 }, '70', [{ x: 112, y: 40 }]).side).toBe('left');
  const both = gapFigure(100, { from: 0, to: 80 }, '70', [
    { x: 112, y: 40 },
    { x: 88, y: 40 },
  ]);
  expect(Math.abs(both.y - 40)).toBeGreaterThan(16);
});

test('where every place is taken the least covered is used', () => {
  const spots = [10, 20, 30, 40].flatMap((y) => [
    { x: 90, y },
    { x: 110, y },
  ]);
  expect(gapFigure(100, { from: 20, to: 30 }, '70', [...spots, { x: 106, y: 25 }]).side).toBe('left');
});
