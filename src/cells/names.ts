import type { Book, CellId, CellKind } from './kinds';

/**
 * An id no cell of the book has, e.g. `pour-3` or `shop-card-1`: without spaces, which part one reference from the next
 * in a page. Ids are counted, not drawn, so that the same steps give the same book.
 */
export function freeId(book: Book, kind: CellKind): CellId {
  const taken = new Set(book.cells.map((cell) => cell.id));
  const word = kind.replaceAll(' ', '-');
  let number = 1;
  while (taken.has(`${word}-${number}`)) number++;
  return `${word}-${number}`;
}

/** The name itself, or with the next free number behind it: "Pour", "Pour 2", … */
export function freeName(book: Book, name: string): string {
  const taken = new Set(book.cells.map((cell) => cell.name));
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}
