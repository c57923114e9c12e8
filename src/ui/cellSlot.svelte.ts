import type { Evaluation } from '$src/cells/evaluate';
import type { Book, Cell, CellId, CellKind } from '$src/cells/kinds';
import { sameList } from './sameList';

const READY: Evaluation = { state: 'ready' };

/**
 * One cell of the book, watched by itself: a change elsewhere in the book redraws nothing that shows it. It is told of
 * each change and not derived from the book, or every change would ask all that shows any cell whether it is meant.
 */
export class CellSlot {
  cell: Cell | null = $state.raw(null);
  evaluation: Evaluation = $state.raw(READY);

  take(cell: Cell | undefined, evaluation: Evaluation | undefined): void {
    this.cell = cell ?? null;
    this.evaluation = evaluation ?? READY;
  }
}

/** The cells of one kind; the list stays the same while none of them changes. */
export class KindList {
  readonly #kind: CellKind;
  cells: readonly Cell[] = $state.raw([]);

  constructor(kind: CellKind) {
    this.#kind = kind;
  }

  take(book: Book): void {
    const now = book.cells.filter((cell) => cell.kind === this.#kind);
    this.cells = sameList(this.cells, now);
  }
}

/** The cells in their order, and which take which: the same objects while nothing of that changes. */
export class BookOrder {
  ids: readonly CellId[] = $state.raw([]);
  takers: ReadonlyMap<CellId, readonly CellId[]> = $state.raw(new Map());
  #needs: readonly string[] = [];

  take({ cells }: Book, needsOf: (cell: Cell) => readonly CellId[]): void {
    this.ids = sameList(
      this.ids,
      cells.map(({ id }) => id),
    );
    const needs = cells.map((cell) => [cell.id, ...needsOf(cell)]);
    const told = sameList(
      this.#needs,
      needs.map((ids) => ids.join(' ')),
    );
    if (told === this.#needs) return;
    this.#needs = told;
    const takers = new Map<CellId, CellId[]>();
    for (const [id, ...taken] of needs)
      for (const one of taken) takers.set(one, [...(takers.get(one) ?? []), id!]);
    this.takers = takers;
  }
}
