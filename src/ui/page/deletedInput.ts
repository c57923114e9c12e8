import type { Book, Cell, CellId } from '$src/cells/kinds';
import type { History } from '../history';

/** A cell that was taken, and deleted; and the book as it was just before. */
export interface DeletedInput {
  readonly cell: Cell;
  readonly before: Book;
  /** Nothing was done since. */
  readonly isLastStep: boolean;
}

const cellIn = (book: Book, id: unknown): Cell | undefined => book.cells.find((cell) => cell.id === id);

/** What a cell takes in a place: one cell, several in a list, or none. */
function takenIn(cell: Cell, place: string): readonly CellId[] {
  const taken: unknown = cell[place as keyof Cell] ?? [];
  return Array.isArray(taken) ? (taken as CellId[]) : [taken as CellId];
}

/**
 * What this cell took in a place that is empty now, or in a list that is too short, where it went with a cell that was
 * deleted; null where nothing tells.
 */
export function deletedInput(
  { now, past }: History<Book>,
  taker: CellId,
  place: string,
): DeletedInput | null {
  let later = now;
  for (const { before } of past.toReversed()) {
    const was = cellIn(before, taker);
    if (!was) return null;
    const still = takenIn(cellIn(later, taker) ?? was, place);
    const lost = takenIn(was, place).find((id) => !still.includes(id));
    if (lost !== undefined) {
      const cell = cellIn(later, lost) ? undefined : cellIn(before, lost);
      return cell ? { cell, before, isLastStep: later === now } : null;
    }
    later = before;
  }
  return null;
}
