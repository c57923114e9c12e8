import type { Book, CellId } from '$src/cells/kinds';

/**
 * The cells to look at after a change of a book, of those now in it: the ones that came; else the neighbours of the ones
 * that went; else the ones that are not as they were or stand elsewhere. None when only what stands over the cells changed.
 */
export function changedCells(before: Book, now: Book): CellId[] {
  const old = new Map(before.cells.map((cell, place) => [cell.id, { cell, place }]));
  const here = new Set(now.cells.map(({ id }) => id));
  const come = now.cells.filter(({ id }) => !old.has(id));
  if (come.length > 0) return come.map(({ id }) => id);
  const gone = before.cells.findIndex(({ id }) => !here.has(id));
  if (gone >= 0) return [now.cells[gone], now.cells[gone - 1]].flatMap((cell) => cell?.id ?? []);
  const isOther = (cell: Book['cells'][number], place: number): boolean =>
    old.get(cell.id)!.cell !== cell || old.get(cell.id)!.place !== place;
  return now.cells.filter(isOther).map(({ id }) => id);
}
