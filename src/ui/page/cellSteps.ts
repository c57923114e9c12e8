import { copyCell } from '$src/cells/edit';
import type { Cell } from '$src/cells/kinds';
import { bench } from '../bench.svelte';
import { selectLater } from './focusLater';

/** Shows a hidden cell, hides one that is shown, and says so. */
export function foldCell(cell: Cell): void {
  const label = `${cell.name} ${cell.folded ? 'shown' : 'hidden'}`;
  bench.changeCell(cell.id, label, (old) => ({ ...old, folded: !old.folded }));
  bench.announcement = `${label}.`;
}

/** Puts a copy below the cell, says so, and goes to its name, to be typed over. */
export function duplicateCell(cell: Cell): void {
  bench.change(`${cell.name} duplicated`, (book) => copyCell(book, cell.id));
  copiedBelow(cell, `${cell.name} duplicated below.`);
}

/** Says what was put below the cell, and goes to its name, to be typed over. */
export function copiedBelow({ id }: Cell, announcement: string): void {
  bench.announcement = announcement;
  const place = bench.book.cells.findIndex((other) => other.id === id);
  selectLater(`name-${bench.book.cells[place + 1]?.id}`);
}
