import type { Evaluation } from '$src/cells/evaluate';
import type { Book, Cell, CellId, CellKind } from '$src/cells/kinds';

interface Source {
  readonly book: Book;
  readonly evaluations: ReadonlyMap<CellId, Evaluation>;
}

const READY: Evaluation = { state: 'ready' };

/** One cell of the book, watched by itself: a change elsewhere in the book redraws nothing that shows it. */
export class CellSlot {
  readonly #source: Source;
  readonly #id: CellId;
  readonly cell: Cell | null = $derived.by(
    () => this.#source.book.cells.find((cell) => cell.id === this.#id) ?? null,
  );
  readonly evaluation: Evaluation = $derived.by(() => this.#source.evaluations.get(this.#id) ?? READY);

  constructor(source: Source, id: CellId) {
    this.#source = source;
    this.#id = id;
  }
}

/** The list before when the new one has the same things in it, so that nothing that shows it is redrawn. */
function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  const isSame = before.length === now.length && now.every((item, index) => Object.is(item, before[index]));
  return isSame ? before : now;
}

/** The cells of one kind; the list stays the same while none of them changes. */
export class KindList {
  readonly #source: Source;
  readonly #kind: CellKind;
  #before: readonly Cell[] = [];
  readonly cells: readonly Cell[] = $derived.by(() => {
    const now = this.#source.book.cells.filter((cell) => cell.kind === this.#kind);
    this.#before = sameList(this.#before, now);
    return this.#before;
  });

  constructor(source: Source, kind: CellKind) {
    this.#source = source;
    this.#kind = kind;
  }
}
