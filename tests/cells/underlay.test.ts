import { expect, test } from 'vitest';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import { LARGEST_PICTURE, type Underlay } from '$src/cells/underlay';
import { underlayPlace } from '$src/cells/underlayPlace';
import { firstOf, sampleBook } from '../book/sample';

const underlay: Underlay = {
  image: 'data:image/jpeg;base64,AAAA',
  width: 800,
  height: 400,
  marks: [
    { x: 100, y: 300 },
    { x: 500, y: 300 },
  ],
  length: 0.2,
  at: { x: 0.155, y: 0 },
  direction: 0,
  opacity: 0.6,
};

test('two marks and a length set the scale; y of the picture runs down, y of the die up', () => {
  const place = underlayPlace(underlay)!;
  expect(place({ x: 100, y: 300 })).toEqual({ x: 0.155, y: 0 });
  expect(place({ x: 500, y: 300 }).x).toBeCloseTo(0.355, 12);
  expect(place({ x: 100, y: 200 }).y).toBeCloseTo(0.05, 12);
});

test('a picture taken aslant is turned upright by the direction of its marks', () => {
  const slant: Underlay = {
    ...underlay,
    marks: [
      { x: 100, y: 300 },
      { x: 400, y: 0 },
    ],
    direction: Math.PI / 6,
  };
  const place = underlayPlace(slant)!;
  const end = place({ x: 400, y: 0 });
  expect(Math.hypot(end.x - 0.155, end.y)).toBeCloseTo(0.2, 12);
  expect(Math.atan2(end.y, end.x - 0.155)).toBeCloseTo(Math.PI / 6, 12);
});

test('marks on one place, or no length, set no scale', () => {
  expect(underlayPlace({ ...underlay, marks: [underlay.marks[0], underlay.marks[0]] })).toBeNull();
  expect(underlayPlace({ ...underlay, length: 0 })).toBeNull();
});

test('a picture is kept in the book, and changes no pour', () => {
  const book = sampleBook();
  const section = firstOf(book, 'section');
  const traced = replaceCell(book, { ...section, underlay });
  expect(readBook(writeBook(traced))).toEqual({ book: traced });
  expect(evaluateBook(traced).get('pour-1')).toEqual(evaluateBook(book).get('pour-1'));
});

test.each([
  ['one from elsewhere', 'https://example.org/a.jpg'],
  ['one that could run', 'data:image/svg+xml;base64,AAAA'],
  ['one that is too large', `data:image/png;base64,${'A'.repeat(LARGEST_PICTURE)}`],
])('a book with a picture is refused: %s', (_, image) => {
  const book = sampleBook();
  const text = writeBook(
    replaceCell(book, { ...firstOf(book, 'section'), underlay: { ...underlay, image } }),
  );
  const read = readBook(text);
  if (!('issues' in read)) throw new Error('It was opened.');
  expect(read.issues[0]!.path).toMatch(/underlay\.image$/);
  expect(read.issues[0]!.message.length).toBeLessThan(300);
});
