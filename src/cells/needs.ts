import type { Book, Cell, CellId, CellKind } from './kinds';

/** A place in a cell that names another cell. */
export interface Reference {
  /** Path of the field in the cell, e.g. `charge` or `pours.1`. */
  readonly path: string;
  readonly kind: CellKind;
  /** null when none is chosen. */
  readonly id: CellId | null;
}

/** The cells a cell is worked out from, in the order of its fields. What it is only drawn with does not count. */
export function referencesOf(cell: Cell): Reference[] {
  switch (cell.kind) {
    case 'charge':
      return [
        { path: 'section', kind: 'section', id: cell.section },
        { path: 'metal', kind: 'metal', id: cell.metal },
        { path: 'tilt', kind: 'tilt', id: cell.tilt },
      ];
    case 'pour':
      return [
        { path: 'section', kind: 'section', id: cell.section },
        { path: 'metal', kind: 'metal', id: cell.metal },
        { path: 'charge', kind: 'charge', id: cell.charge },
        { path: 'tilt', kind: 'tilt', id: cell.tilt },
      ];
    case 'compare':
      return cell.pours.map((id, index) => ({ path: `pours.${index}`, kind: 'pour', id }));
    case 'study':
    case 'shop card':
      return [{ path: 'pour', kind: 'pour', id: cell.pour }];
    case 'castings':
      return cell.castings.flatMap(({ pour }, index): Reference[] =>
        pour === null ? [] : [{ path: `castings.${index}.pour`, kind: 'pour', id: pour }],
      );
    case 'guess':
      return cell.pours.map((id, index) => ({ path: `pours.${index}`, kind: 'pour', id }));
    default:
      return [];
  }
}

/** Ids of the cells a cell needs, each once; they may be missing from the book. */
export function needsOf(cell: Cell): CellId[] {
  return [...new Set(referencesOf(cell).flatMap(({ id }) => (id === null ? [] : [id])))];
}

/** Ids of the cells that take this one directly, in book order. */
export function takenBy(book: Book, id: CellId): CellId[] {
  return book.cells.filter((cell) => needsOf(cell).includes(id)).map((cell) => cell.id);
}

/** Everything that a change of this cell makes out of date, in the order it has to be worked out; not the cell itself. */
export function dependentsOf(book: Book, id: CellId): CellId[] {
  const changed = new Set([id]);
  for (const cell of inOrder(book)) {
    if (needsOf(cell).some((need) => changed.has(need))) changed.add(cell.id);
  }
  changed.delete(id);
  return [...changed];
}

/** A cell only ever needs cells of an earlier kind in this list, so a book cannot go round in circles. */
const ORDER: readonly CellKind[] = [
  'note',
  'section',
  'metal',
  'tilt',
  'charge',
  'pour',
  'compare',
  'study',
  'castings',
  'guess',
  'shop card',
];

/** The cells of a book so that each comes after all it needs; otherwise in book order. */
export function inOrder(book: Book): Cell[] {
  return ORDER.flatMap((kind) => book.cells.filter((cell) => cell.kind === kind));
}
