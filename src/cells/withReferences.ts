import type { Cell, CellId, NoteCell } from './kinds';

/** The cell with every mention of another cell replaced; null = that cell is not there. */
export function withReferences(cell: Cell, now: (id: CellId) => CellId | null): Cell {
  const one = (id: CellId | null) => (id === null ? null : now(id));
  const many = (ids: readonly CellId[]) => ids.flatMap((id) => now(id) ?? []);
  switch (cell.kind) {
    case 'note':
      return afterGuess(cell, cell.after === undefined ? null : now(cell.after));
    case 'section':
      return { ...cell, drawnWith: one(cell.drawnWith) };
    case 'charge':
      return { ...cell, section: one(cell.section), metal: one(cell.metal), tilt: one(cell.tilt) };
    case 'pour':
      return {
        ...cell,
        section: one(cell.section),
        metal: one(cell.metal),
        charge: one(cell.charge),
        tilt: one(cell.tilt),
      };
    case 'compare':
    case 'guess':
      return { ...cell, pours: many(cell.pours) };
    case 'study':
    case 'shop card':
      return { ...cell, pour: one(cell.pour) };
    case 'castings':
      return { ...cell, castings: cell.castings.map((row) => ({ ...row, pour: one(row.pour) })) };
    default:
      return cell;
  }
}

/** The note tied to that guess; null = it is shown at once. */
export function afterGuess({ after: _, ...note }: NoteCell, guess: CellId | null): NoteCell {
  return guess === null ? note : { ...note, after: guess };
}
