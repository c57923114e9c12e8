import { expect, test } from 'vitest';
import { copyCell, deleteCell, moveCell, replaceCell } from '$src/cells/edit';
import { changedCells } from '$src/ui/page/changedCells';
import { firstOf, sampleBook } from '../../book/sample';

const book = sampleBook();
const note = firstOf(book, 'note');
const section = firstOf(book, 'section');
const metal = firstOf(book, 'metal');
const tilt = firstOf(book, 'tilt');

test('a cell that came is looked at, not those that take it again', () => {
  expect(changedCells(deleteCell(book, metal.id), book)).toEqual([metal.id]);
  const copied = copyCell(book, note.id);
  expect(changedCells(book, copied)).toEqual([copied.cells[1]!.id]);
});

test('of a cell that went its neighbours are looked at, as far as there are any', () => {
  expect(changedCells(book, deleteCell(book, metal.id))).toEqual([tilt.id, section.id]);
  expect(changedCells(book, deleteCell(book, note.id))).toEqual([section.id]);
  const last = book.cells.at(-1)!;
  expect(changedCells(book, deleteCell(book, last.id))).toEqual([book.cells.at(-2)!.id]);
});

test('else those that are other than they were or stand elsewhere; none when only the title is another', () => {
  expect(changedCells(book, replaceCell(book, { ...metal, name: 'Another' }))).toEqual([metal.id]);
  expect(changedCells(book, moveCell(book, section.id, 1))).toEqual([metal.id, section.id]);
  expect(changedCells(book, { ...book, title: 'Another' })).toEqual([]);
});
