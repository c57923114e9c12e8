import { addCell } from './edit';
import type { Book, Cell } from './kinds';
import { freeId, freeName } from './names';

/** Places that hold one cell each. */
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
  const whole = poursRetaken(cell, was, deleted, id);
  return lost.length === 0
    ? whole
    : ({ ...whole, ...Object.fromEntries(lost.map((place) => [place, id])) } as Cell);
}

/** A comparison and a guess have the pour again where it stood among theirs. */
function poursRetaken(cell: Cell, was: Cell, deleted: Cell, id: string): Cell {
  if (!('pours' in cell && 'pours' in was)) return cell;
  const index = was.pours.indexOf(deleted.id);
  if (index < 0 || cell.pours.includes(deleted.id)) return cell;
  return { ...cell, pours: cell.pours.toSpliced(index, 0, id) };
}

const read = (cell: Cell, place: (typeof PLACES)[number]): unknown => cell[place as keyof Cell];
