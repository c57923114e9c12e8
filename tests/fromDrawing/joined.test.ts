import { expect, it } from 'vitest';
import type { DrawnLine } from '$src/fromDrawing/drawing';
import { joined } from '$src/fromDrawing/joined';

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
