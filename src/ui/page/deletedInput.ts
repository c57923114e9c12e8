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

/** What this cell took in a place that is empty now, where it went with a cell that was deleted; null where nothing tells. */
export function deletedInput(
  { now, past }: History<Book>,
  taker: CellId,
  place: string,
): DeletedInput | null {
  let later = now;
  for (const { before } of past.toReversed()) {
    const was = cellIn(before, taker);
    if (!was) return null;
    const taken = was[place as keyof Cell] ?? null;
    if (taken !== null) {
      const cell = cellIn(later, taken) ? undefined : cellIn(before, taken);
      return cell ? { cell, before, isLastStep: later === now } : null;
    }
    later = before;
  }
  return null;
}
