import { expect, test } from 'vitest';
import { coverOf, outlineIn } from '$src/ui/shelf/keptBook';
import { firstOf, sampleBook } from '../../book/sample';

test('the cover of a book is its title, its size and its first section', () => {
  const book = sampleBook();
  const cover = coverOf(book);
  expect(cover).toMatchObject({ title: book.title, casting: book.casting, cells: book.cells.length });
  expect(cover.section).toBe(firstOf(book, 'section').section);
  expect(coverOf({ ...book, cells: [] }).section).toBeNull();
});

test('the outline fills its box one way and stays inside it both ways', () => {
  const { floor, roof } = outlineIn(firstOf(sampleBook(), 'section').section, 92, 44)!;
  const spots = [...`${floor}${roof}`.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
    Number(x),
    Number(y),
  ]);
  const xs = spots.map(([x]) => x!);
  const ys = spots.map(([, y]) => y!);
  expect(Math.min(...xs)).toBeCloseTo(0, 1);
  expect(Math.max(...xs)).toBeCloseTo(92, 1);
  expect(Math.min(...ys)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...ys)).toBeLessThanOrEqual(44);
});

test('an outline without extent is not drawn', () => {
  const { section } = firstOf(sampleBook(), 'section');
  const point = { x: 0.1, y: 0.1 };
  expect(outlineIn({ ...section, floor: [point, point], roof: [point, point] }, 92, 44)).toBeNull();
});
