import { addNewCell } from '$src/cells/addNewCell';
import type { CellId, CellKind } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { bench } from '../bench.svelte';

/** Puts a new cell below another, or at the end of the book, and says so. */
export function addAfter(above: CellId | null, kind: CellKind): CellId {
  const found = bench.book.cells.findIndex(({ id }) => id === above);
  const place = found < 0 ? bench.book.cells.length : found + 1;
  const cell = newCell(kind, bench.book, place);
  bench.change(`${cell.name} added`, (book) => addNewCell(book, cell, place));
  bench.announcement = `${kind} cell added.`;
  return cell.id;
}
