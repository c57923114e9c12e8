import { writeBook } from '$src/book/writeBook';
import type { Book, Cell } from '$src/cells/kinds';
import { sampleBook } from '../../book/sample';

/** A coarse mesh: the same page and solver, and a pour takes a moment only. */
const MESH_CELLS = 60;

const quick = (cell: Cell): Cell =>
  cell.kind === 'pour' ? { ...cell, computation: { ...cell.computation, meshCells: MESH_CELLS } } : cell;

const fileOf = (book: Book, cells: readonly Cell[]): string =>
  writeBook({ ...book, cells: cells.map(quick) });

/** A book file of two pours, compared. */
export function twoPours(): string {
  const book = sampleBook();
  return fileOf(book, book.cells);
}

/** A book file of one pour with what it takes: all that most tests of a cell need. */
export function onePour(): string {
  const book = sampleBook();
  const pour = book.cells.find(({ kind }) => kind === 'pour');
  return fileOf(
    book,
    book.cells.filter((cell) => cell === pour || (cell.kind !== 'pour' && cell.kind !== 'compare')),
  );
}
