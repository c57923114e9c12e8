import type { Book, CellId, CellKind } from './kinds';

/** An id no cell of the book has, e.g. `pour-3`. Ids are counted, not drawn, so that the same steps give the same book. */
export function freeId(book: Book, kind: CellKind): CellId {
  const taken = new Set(book.cells.map((cell) => cell.id));
  let number = 1;
  while (taken.has(`${kind}-${number}`)) number++;
  return `${kind}-${number}`;
}

/** The name itself, or with the next free number behind it: "Pour", "Pour 2", … */
export function freeName(book: Book, name: string): string {
  const taken = new Set(book.cells.map((cell) => cell.name));
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}
