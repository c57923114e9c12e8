import { expect, test } from 'vitest';
import { hatchLines } from '$src/ui/drawing/hatchLines';

const strokes = (d: string) =>
  [...d.matchAll(/M(\S+) ([^L]+)L(\S+) ([^M]+)/g)].map((found) => found.slice(1).map(Number));

const SQUARE = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 100 },
  { x: 0, y: 100 },
];

test('strokes lie evenly, lean as asked, and end at the outline', () => {
  for (const lean of [1, -1] as const) {
    const all = strokes(hatchLines(SQUARE, 10, lean));
    // A line that only touches a corner is no stroke.
    expect(all.length).toBe(lean === 1 ? 15 : 14);
    for (const [x1, y1, x2, y2] of all as [number, number, number, number][]) {
      expect(Math.abs((y2 - y1) * lean - (x2 - x1))).toBeLessThan(0.25);
      for (const [x, y] of [
        [x1, y1],
        [x2, y2],
      ] as const)
        expect(Math.min(Math.abs(x), Math.abs(y), Math.abs(100 - x), Math.abs(100 - y))).toBeLessThan(0.1);
    }
  }
});

test('the length of all strokes times their spacing is the area, also where the outline is bent', () => {
  const bent = [
    { x: 0, y: 0 },
    { x: 200, y: 0 },
    { x: 200, y: 40 },
    { x: 60, y: 40 },
    { x: 60, y: 120 },
    { x: 0, y: 120 },
  ];
  const length = strokes(hatchLines(bent, 2, 1)).reduce(
    (sum, [x1, y1, x2, y2]) => sum + Math.hypot(x2! - x1!, y2! - y1!),
    0,
  );
  expect(Math.abs((length * 2) / (200 * 40 + 60 * 80) - 1)).toBeLessThan(0.02);
});
