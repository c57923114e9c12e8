import type { Book, Cell, CellId } from './kinds';
import { needsOf } from './needs';

/**
 * A locked cell keeps its inputs: a teaching aid that keeps a class from changing what the lesson rests on, and no
 * security, since anyone can unlock it.
 */

/** The first locked cell that a change would alter or take out; null when the change may be made. */
export function lockBroken(before: Book, after: Book): Cell | null {
  const left = new Map(after.cells.map((cell) => [cell.id, cell]));
  return before.cells.find((cell) => cell.locked && isBroken(cell, left.get(cell.id))) ?? null;
}

function isBroken(before: Cell, after: Cell | undefined): boolean {
  if (after === before) return false;
  if (after === undefined) return true;
  // Unlocking changes nothing else; whoever unlocks may then change what they like.
  const alike = after.locked ? mayChange : (cell: Cell): Cell => withLock(cell, false);
  return JSON.stringify(alike(after)) !== JSON.stringify(alike(before));
}

/** The cell with what a lock leaves open set alike: folding away, how a comparison is played, the answer to a guess. */
function mayChange(cell: Cell): Cell {
  const open = { ...cell, folded: false };
  if (open.kind === 'compare') return { ...open, stepBy: 'time' };
  return open.kind === 'guess' ? { ...open, drawn: [], picked: null, given: false } : open;
}

/** The book with the cell locked or unlocked. */
export function setLocked(book: Book, id: CellId, locked: boolean): Book {
  return { ...book, cells: book.cells.map((cell) => (cell.id === id ? withLock(cell, locked) : cell)) };
}

function withLock<C extends Cell>({ locked: _, ...cell }: C, locked: boolean): C {
  return (locked ? { ...cell, locked } : cell) as C;
}

/** The book with everything locked that a guess rests on: its pours and what they take, the guess itself, and the notes tied to it. */
export function lockLesson(book: Book, guess: CellId): Book {
  const find = (id: CellId) => book.cells.find((cell) => cell.id === id);
  const reached = new Set<CellId>();
  const reach = (id: CellId): void => {
    if (reached.has(id)) return;
    reached.add(id);
    const cell = find(id);
    if (cell) needsOf(cell).forEach(reach);
  };
  reach(guess);
  for (const cell of book.cells) if (cell.kind === 'note' && cell.after === guess) reached.add(cell.id);
  return [...reached].reduce((next, id) => setLocked(next, id, true), book);
}
