import { addCell } from '$src/cells/edit';
import type { Book, Cell, CellKind } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';

const KINDS: readonly CellKind[] = ['note', 'section', 'metal', 'tilt', 'charge', 'pour', 'pour', 'compare'];

/** A book with one of everything and two pours, made the way the page makes it. */
export function sampleBook(): Book {
  const empty: Book = { title: 'Hinge arms, trial 1', casting: 'Hinge arm, A356', cells: [] };
  return KINDS.reduce((book, kind) => addCell(book, newCell(kind, book)), empty);
}

/** The first cell of that kind. */
export function firstOf<K extends CellKind>(book: Book, kind: K): Extract<Cell, { kind: K }> {
  const cell = book.cells.find((one) => one.kind === kind);
  if (!cell) throw new Error(`No ${kind} in the book.`);
  return cell as Extract<Cell, { kind: K }>;
}
