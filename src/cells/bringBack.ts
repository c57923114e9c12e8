import { addCell } from './edit';
import type { Book, Cell } from './kinds';
import { freeId, freeName } from './names';

/** Places that hold one cell each. Lists, such as the pours of a comparison, are filled by hand. */
const PLACES = ['section', 'metal', 'tilt', 'charge', 'pour', 'drawnWith'] as const;

/**
 * The book with a deleted cell where it was, taken again by the cells that took it and have taken no other since.
 * @param before the book just before it was deleted
 */
export function bringBack(book: Book, deleted: Cell, before: Book): Book {
  const isTaken = book.cells.some(({ id }) => id === deleted.id);
  const id = isTaken ? freeId(book, deleted.kind) : deleted.id;
  const own = { ...deleted, id, name: freeName(book, deleted.name) };
  const was = new Map(before.cells.map((cell) => [cell.id, cell]));
  const cells = book.cells.map((cell) => retaken(cell, was.get(cell.id), deleted, id));
  return addCell({ ...book, cells }, own, before.cells.indexOf(deleted));
}

function retaken(cell: Cell, was: Cell | undefined, deleted: Cell, id: string): Cell {
  if (!was || cell.locked) return cell;
  const lost = PLACES.filter((place) => read(was, place) === deleted.id && read(cell, place) === null);
  return lost.length === 0
    ? cell
    : ({ ...cell, ...Object.fromEntries(lost.map((place) => [place, id])) } as Cell);
}

const read = (cell: Cell, place: (typeof PLACES)[number]): unknown => cell[place as keyof Cell];
