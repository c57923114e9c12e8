import { addCell } from './edit';
import { firstCharge, isUnconsidered } from './firstCharge';
import type { Book, Cell } from './kinds';
import { aroundPour, windowFor } from './windowFor';

/**
 * The book with a new cell in it. Cells that lack one of its kind take it when it is the only one there is, in whatever
 * order a book is begun; locked ones stay as they are.
 */
export function addNewCell(book: Book, cell: Cell, place?: number): Book {
  const added = addCell(book, cell, place);
  if (book.cells.some(({ kind }) => kind === cell.kind)) return added;
  const lacking = new Set(book.cells.filter((one) => lacks(one, cell)).map(({ id }) => id));
  const given = {
    ...added,
    cells: added.cells.map((one) => (lacking.has(one.id) ? ({ ...one, [cell.kind]: cell.id } as Cell) : one)),
  };
  const whole = {
    ...given,
    cells: given.cells.map((one) => (lacking.has(one.id) ? settled(given, one) : one)),
  };
  return { ...whole, cells: whole.cells.map((one) => withWindow(book, whole, one)) };
}

/** A study still as it was begun, around a pour that is only now in order, looks at what suits that pour. */
function withWindow(before: Book, book: Book, cell: Cell): Cell {
  if (cell.kind !== 'study' || cell.locked) return cell;
  const was = before.cells.find(({ id }) => id === cell.id);
  if (was?.kind !== 'study') return cell;
  const asBegun = JSON.stringify(windowFor(before, was.pour).axes);
  if (JSON.stringify(was.study.axes) !== asBegun) return cell;
  const { axes } = windowFor(book, cell.pour);
  return JSON.stringify(axes) === asBegun ? cell : { ...cell, study: { ...cell.study, axes } };
}

/** Whether the place that it keeps for this kind is empty. */
const lacks = (cell: Cell, { kind }: Cell): boolean => !cell.locked && cell[kind as keyof Cell] === null;

/** A charge and a study begin as suits what they take, which was not there when they were made. */
function settled(book: Book, cell: Cell): Cell {
  if (cell.kind === 'study') return { ...cell, study: aroundPour(book, cell.study, cell.pour) };
  if (cell.kind !== 'charge' || !isUnconsidered(cell.charge, book)) return cell;
  const others = { ...book, cells: book.cells.filter(({ id }) => id !== cell.id) };
  return { ...cell, charge: firstCharge(cell, others) };
}
