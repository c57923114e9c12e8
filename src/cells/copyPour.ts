import { copyCell } from './edit';
import type { Book, Cell, CellId, PourCell } from './kinds';

/** What a pour takes and a copy of it has of its own unless told otherwise. The metal stays shared: it is the same alloy. */
export const OWN_INPUTS = ['section', 'tilt', 'charge'] as const;
export type OwnInput = (typeof OWN_INPUTS)[number] | 'metal';

/**
 * A copy of a pour with copies of its inputs, each right after the cell it was copied from, so that one of them can be
 * changed while the first pour stays as it was. Those not named are taken by both pours.
 */
export function copyPour(book: Book, id: CellId, own: readonly OwnInput[] = OWN_INPUTS): Book {
  const pour = book.cells.find((cell): cell is PourCell => cell.kind === 'pour' && cell.id === id);
  if (!pour) return book;
  const copies = new Map<CellId, CellId>();
  let changed = book;
  for (const original of [...own.map((input) => pour[input]), pour.id]) {
    if (original === null || copies.has(original)) continue;
    const copied = copyCell(changed, original);
    copies.set(original, idAfter(copied, original));
    changed = copied;
  }
  const made = new Set(copies.values());
  return {
    ...changed,
    cells: changed.cells.map((cell) => (made.has(cell.id) ? retaken(cell, copies) : cell)),
  };
}

function idAfter(book: Book, id: CellId): CellId {
  return book.cells[book.cells.findIndex((cell) => cell.id === id) + 1]!.id;
}

/** The copy, taking the copies instead of what the original takes. */
function retaken(cell: Cell, copies: ReadonlyMap<CellId, CellId>): Cell {
  const copyOf = (id: CellId | null) => (id === null ? null : (copies.get(id) ?? id));
  switch (cell.kind) {
    case 'section':
      return { ...cell, drawnWith: copyOf(cell.drawnWith) };
    case 'charge':
      return { ...cell, section: copyOf(cell.section), metal: copyOf(cell.metal), tilt: copyOf(cell.tilt) };
    case 'pour':
      return {
        ...cell,
        section: copyOf(cell.section),
        metal: copyOf(cell.metal),
        charge: copyOf(cell.charge),
        tilt: copyOf(cell.tilt),
      };
    default:
      return cell;
  }
}
