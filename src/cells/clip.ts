import type { Book, Cell, CellId } from './kinds';
import { freeId, freeName } from './names';
import { inOrder, needsOf } from './needs';
import { withReferences } from './withReferences';

/** Cells on their way from one place to another: those chosen, and all that they need. */
export interface Clip {
  readonly chosen: readonly CellId[];
  /** In book order, each after nothing in particular; every need of a chosen cell that its book had is among them. */
  readonly cells: readonly Cell[];
}

/** The cells and everything they are worked out from. */
export function clipOf(book: Book, chosen: readonly CellId[]): Clip {
  const wanted = new Set(chosen);
  for (const id of wanted) {
    const cell = book.cells.find((one) => one.id === id);
    for (const need of cell ? needsOf(cell) : []) wanted.add(need);
  }
  return { chosen, cells: book.cells.filter(({ id }) => wanted.has(id)) };
}

export interface Pasted {
  readonly book: Book;
  /** The new cells that were chosen, in order. */
  readonly pasted: readonly CellId[];
  /** Names of inputs that came along as copies, and of those of this book that are taken instead. */
  readonly copied: readonly string[];
  readonly relinked: readonly string[];
}

/**
 * The book with the cells put in after `after` (null = at the end). What a chosen cell needs is taken from this book
 * where an equal cell stands, and comes along as a copy where none does.
 */
export function pasteClip(book: Book, clip: Clip, after: CellId | null): Pasted {
  const { ids, coming, relinked } = matched(book, clip);
  const place = after === null ? book.cells.length : book.cells.findIndex(({ id }) => id === after) + 1;
  let grown = book;
  coming.forEach((cell, index) => {
    const fresh = { ...cell, id: freeId(grown, cell.kind), name: freeName(grown, cell.name) };
    ids.set(cell.id, fresh.id);
    grown = { ...grown, cells: grown.cells.toSpliced(place + index, 0, fresh) };
  });
  const arrived = new Set(coming.map(({ id }) => ids.get(id)!));
  const relink = (cell: Cell): Cell =>
    arrived.has(cell.id) ? withReferences(cell, (id) => ids.get(id) ?? null) : cell;
  return {
    book: { ...grown, cells: grown.cells.map(relink) },
    pasted: clip.chosen.flatMap((id) => ids.get(id) ?? []),
    copied: coming.filter(({ id }) => !clip.chosen.includes(id)).map(({ name }) => name),
    relinked,
  };
}

interface Matched {
  /** Where a cell of the clip is found in this book; those that come along are entered later. */
  readonly ids: Map<CellId, CellId>;
  readonly coming: readonly Cell[];
  readonly relinked: readonly string[];
}

/** Which inputs this book already has. Each is looked for after what it takes itself, which may be called otherwise here. */
function matched(book: Book, { chosen, cells }: Clip): Matched {
  const ids = new Map<CellId, CellId>();
  const relinked: string[] = [];
  for (const cell of inOrder({ title: '', casting: '', cells })) {
    if (chosen.includes(cell.id)) continue;
    const content = contentOf(withReferences(cell, (id) => ids.get(id) ?? null));
    const equal = book.cells.find((other) => contentOf(other) === content);
    if (!equal) continue;
    ids.set(cell.id, equal.id);
    relinked.push(equal.name);
  }
  return { ids, coming: cells.filter(({ id }) => !ids.has(id)), relinked };
}

/** What a cell is worth to others: not its name, fold or lock, nor what a section is drawn with. */
function contentOf(cell: Cell): string {
  const { id: _id, name: _name, folded: _folded, locked: _locked, ...content } = cell;
  return JSON.stringify(content.kind === 'section' ? { ...content, drawnWith: null } : content);
}
