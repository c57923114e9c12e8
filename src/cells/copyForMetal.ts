import { copyPour } from './copyPour';
import { replaceCell } from './edit';
import { evaluateBook } from './evaluate';
import type { Book, CellId, ChargeBy, ChargeCell, PourCell } from './kinds';

/**
 * A copy of a pour with a metal and a charge of its own, to try it in another metal. The charge keeps its volume
 * whatever metal is then chosen: one by mass is told by its fill level instead, or by its head where no level behind
 * the lip exists, since a mass would be another volume of another metal.
 */
export function copyForMetal(book: Book, id: CellId): Book {
  const pour = book.cells.find((cell): cell is PourCell => cell.kind === 'pour' && cell.id === id);
  const charge = pour && chargeCell(book, pour.charge);
  const copied = copyPour(book, id, ['metal', 'charge']);
  if (!charge) return copied;
  const kept = byVolume(book, charge);
  const copy = copied.cells[copied.cells.findIndex((cell) => cell.id === charge.id) + 1];
  return kept && copy?.kind === 'charge' ? replaceCell(copied, { ...copy, charge: kept }) : copied;
}

const chargeCell = (book: Book, id: CellId | null): ChargeCell | undefined =>
  book.cells.find((cell): cell is ChargeCell => cell.kind === 'charge' && cell.id === id);

/** The charge by what fixes its volume; null where nothing does, or where it is so already. */
function byVolume(book: Book, { id, charge }: ChargeCell): ChargeBy | null {
  const evaluation = evaluateBook(book).get(id);
  if (charge.by !== 'mass' || !evaluation || !('charge' in evaluation)) return null;
  const { fromLip, head } = evaluation.charge;
  if (fromLip !== null) return { by: 'fill level', fromLip };
  return head === null ? null : { by: 'head', head };
}
