import type { Book, Cell, CellId } from './kinds';
import { freeId, freeName } from './names';
import { afterGuess } from './withReferences';

/** Pure changes of a book. A change that changes nothing returns the same book. */

/** The book with the cell put in at that place, at the end by default. */
export function addCell(book: Book, cell: Cell, index: number = book.cells.length): Book {
  return { ...book, cells: book.cells.toSpliced(index, 0, cell) };
}

/** A copy right after the cell, with a name and id of its own; it takes the same cells. */
export function copyCell(book: Book, id: CellId): Book {
  const index = book.cells.findIndex((cell) => cell.id === id);
  const cell = book.cells[index];
  if (!cell) return book;
  // A copy is for changing, so it is not locked.
  const { locked: _, ...open } = cell;
  const copy = { ...open, id: freeId(book, cell.kind), name: freeName(book, `${cell.name} copy`) } as Cell;
  return addCell(book, copy, index + 1);
}

/** Renames; spaces at the ends go, and an empty name changes nothing. References are by id, so they hold. */
export function renameCell(book: Book, id: CellId, name: string): Book {
  const trimmed = name.trim();
  const cell = book.cells.find((one) => one.id === id);
  if (!cell || trimmed === '' || cell.name === trimmed) return book;
  return replaceCell(book, { ...cell, name: trimmed });
}

/** Moves up (−) or down (+) by so many places, as far as there is room. */
export function moveCell(book: Book, id: CellId, by: number): Book {
  const from = book.cells.findIndex((cell) => cell.id === id);
  if (from < 0) return book;
  return moveCellTo(book, id, from + by);
}

/** Moves to that place in the list, counted after it has been taken out. */
export function moveCellTo(book: Book, id: CellId, index: number): Book {
  const from = book.cells.findIndex((cell) => cell.id === id);
  const to = Math.min(Math.max(index, 0), book.cells.length - 1);
  if (from < 0 || from === to) return book;
  return { ...book, cells: book.cells.toSpliced(from, 1).toSpliced(to, 0, book.cells[from]!) };
}

/** Takes the cell out, and every mention of it. */
export function deleteCell(book: Book, id: CellId): Book {
  if (!book.cells.some((cell) => cell.id === id)) return book;
  const left = book.cells.filter((cell) => cell.id !== id);
  return { ...book, cells: left.map((cell) => withoutMention(cell, id)) };
}

/** The book with the cell of the same id replaced. */
export function replaceCell(book: Book, cell: Cell): Book {
  return { ...book, cells: book.cells.map((one) => (one.id === cell.id ? cell : one)) };
}

function withoutMention(cell: Cell, id: CellId): Cell {
  const unlessGone = (mention: CellId | null) => (mention === id ? null : mention);
  switch (cell.kind) {
    case 'note':
      return cell.after === id ? afterGuess(cell, null) : cell;
    case 'section':
      return cell.drawnWith === id ? { ...cell, drawnWith: null } : cell;
    case 'charge':
      if (![cell.section, cell.metal, cell.tilt].includes(id)) return cell;
      return {
        ...cell,
        section: unlessGone(cell.section),
        metal: unlessGone(cell.metal),
        tilt: unlessGone(cell.tilt),
      };
    case 'pour':
      if (![cell.section, cell.metal, cell.charge, cell.tilt].includes(id)) return cell;
      return {
        ...cell,
        section: unlessGone(cell.section),
        metal: unlessGone(cell.metal),
        charge: unlessGone(cell.charge),
        tilt: unlessGone(cell.tilt),
      };
    case 'compare':
      return cell.pours.includes(id) ? { ...cell, pours: cell.pours.filter((pour) => pour !== id) } : cell;
    case 'study':
    case 'shop card':
      return cell.pour === id ? { ...cell, pour: null } : cell;
    case 'castings':
      if (!cell.castings.some(({ pour }) => pour === id)) return cell;
      return { ...cell, castings: cell.castings.map((row) => ({ ...row, pour: unlessGone(row.pour) })) };
    case 'guess':
      return cell.pours.includes(id) ? { ...cell, pours: cell.pours.filter((pour) => pour !== id) } : cell;
    default:
      return cell;
  }
}
