import { basinCapacity } from '$src/core/level/basinCapacity';
import { shortOfCavity } from '$src/report/shortCharge';
import { addCell, replaceCell } from './edit';
import { evaluateBook } from './evaluate';
import { firstCharge } from './firstCharge';
import type { Book, CellId, ChargeCell, PourCell, SectionCell } from './kinds';
import { freeId, freeName } from './names';

/** What a pour takes whose charge was worked out for another section than it pours. */
export interface ForeignCharge {
  readonly charge: ChargeCell;
  readonly section: SectionCell;
}

const cellOf = (book: Book, id: CellId | null) => book.cells.find((cell) => cell.id === id);

/** The pour's charge and section, where the one was not worked out for the other; null where it was, or one is missing. */
export function foreignCharge(book: Book, pour: PourCell): ForeignCharge | null {
  const [charge, section] = [cellOf(book, pour.charge), cellOf(book, pour.section)];
  if (charge?.kind !== 'charge' || section?.kind !== 'section') return null;
  return charge.section === null || charge.section === section.id ? null : { charge, section };
}

/**
 * The book with a charge for the section that the pour takes, right after the one it had, and taken by it. It is told the
 * same way and amount where that fills the die and stands in the basin, else as a new charge begins.
 */
export function withOwnCharge(book: Book, pourId: CellId): Book {
  const pour = cellOf(book, pourId);
  const foreign = pour?.kind === 'pour' ? foreignCharge(book, pour) : null;
  if (pour?.kind !== 'pour' || !foreign) return book;
  const { charge, section } = foreign;
  const { locked: _, ...open } = charge;
  const copy: ChargeCell = {
    ...open,
    id: freeId(book, 'charge'),
    name: freeName(book, `${charge.name} for ${section.name}`),
    section: section.id,
    metal: pour.metal,
    tilt: pour.tilt,
    folded: false,
  };
  const own = suits(book, copy, section) ? copy : { ...copy, charge: firstCharge(copy, book) };
  const added = addCell(book, own, book.cells.indexOf(charge) + 1);
  return replaceCell(added, { ...pour, charge: own.id });
}

function suits(book: Book, charge: ChargeCell, { section }: SectionCell): boolean {
  const evaluation = evaluateBook(addCell(book, charge)).get(charge.id);
  if (!evaluation || !('charge' in evaluation)) return false;
  const { volume, startInclination } = evaluation.charge;
  return shortOfCavity(section, volume) === 0 && volume <= basinCapacity(section, startInclination);
}
