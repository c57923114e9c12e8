import type { Book, Cell, CellId } from '$src/cells/kinds';
import { needsOf, takenBy } from '$src/cells/needs';

/** The links of a title strip: what the cell takes, or else what it feeds. */
export function linksOf(
  book: Book,
  cell: Cell,
): { readonly word: 'takes' | 'feeds'; readonly cells: readonly Cell[] } {
  const named = (ids: readonly CellId[]) =>
    ids.flatMap((id) => book.cells.find((other) => other.id === id) ?? []);
  const taken = named(needsOf(cell));
  return taken.length > 0
    ? { word: 'takes', cells: taken }
    : { word: 'feeds', cells: named(takenBy(book, cell.id)) };
}
