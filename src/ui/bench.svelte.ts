import { untrack } from 'svelte';
import { type Evaluation, evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellId, CellKind } from '$src/cells/kinds';
import { remember } from '$src/cells/remember';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { beginHistory, type History, recordStep, redoStep, settle, undoStep } from './history';
import { planChange } from './planChange';
import { type Kept, PourQueue } from './pourQueue.svelte';

export type LengthUnit = 'mm' | 'in';
export type CellOf<K extends CellKind> = Extract<Cell, { kind: K }>;

export type RunState = 'fresh' | 'out of date' | 'running' | 'waiting' | 'stopped' | 'failed' | 'none';

/** What the page shows of one pour. */
export interface PourRun {
  /** Newest record there is; it may be coarse, stopped early, or of the plan before the last change. */
  readonly record: PourRecord | null;
  readonly state: RunState;
  /** Share of the present run done, 0 to 1. */
  readonly done: number;
  /** Why there is no run, one sentence. */
  readonly error: string | null;
  /** The record comes from the coarse mesh: draw it as a sketch. */
  readonly coarse: boolean;
  /** The record belongs to the present inputs. */
  readonly current: boolean;
  /** What changed since the record was made, one sentence; null when it is current or there is none. */
  readonly change: string | null;
}

const EMPTY: Book = { title: 'New book', casting: '', cells: [] };

function coresToUse(): number {
  return typeof navigator === 'undefined' ? 1 : Math.max(1, Math.min(4, navigator.hardwareConcurrency ?? 1));
}

async function makeClient() {
  const { createPourClient } = await import('$src/worker/client');
  return createPourClient();
}

/** The page's one store: the book, what its cells come to, and their runs. */
export class Bench {
  #history: History<Book> = $state.raw(beginHistory(EMPTY));
  readonly book: Book = $derived(this.#history.now);
  readonly evaluations: ReadonlyMap<CellId, Evaluation> = $derived(evaluateBook(this.book));
  readonly undoLabel: string | null = $derived(this.#history.past.at(-1)?.label ?? null);
  readonly redoLabel: string | null = $derived(this.#history.future[0]?.label ?? null);
  readonly canUndo: boolean = $derived(this.undoLabel !== null);
  readonly canRedo: boolean = $derived(this.redoLabel !== null);
  lengthUnit: LengthUnit = $state('mm');
  /** Said once by the live region, e.g. "Undone: charge changed". */
  announcement: string = $state('');

  readonly queue = new PourQueue(makeClient, coresToUse());
  /** The last record each pour cell showed, kept on screen while the next one runs. */
  #shown: ReadonlyMap<CellId, Kept> = $state.raw(new Map());
  #visible: ReadonlySet<CellId> = $state.raw(new Set());

  /** Replaces the whole book, without an undo step. */
  open(book: Book): void {
    this.#history = beginHistory(book);
    this.#shown = new Map();
  }

  /** One undo step. Consecutive changes with the same merge key (a drag, typing) become one. */
  change(label: string, next: (book: Book) => Book, merge: string | null = null): void {
    const book = next(this.book);
    if (book !== this.book) this.#history = recordStep(this.#history, label, book, merge);
  }

  /** Changes one cell; the cell keeps its kind. */
  changeCell<C extends Cell>(
    id: CellId,
    label: string,
    next: (cell: C) => C,
    merge: string | null = null,
  ): void {
    const replace = (cell: Cell): Cell => (cell.id === id ? next(cell as C) : cell);
    this.change(label, (book) => ({ ...book, cells: book.cells.map(replace) }), merge);
  }

  /** Ends a drag or a spell of typing: the next change is its own undo step. */
  settle(): void {
    this.#history = settle(this.#history);
  }

  undo(): void {
    const label = this.undoLabel;
    this.#history = undoStep(this.#history);
    if (label) this.announcement = `Undone: ${label}.`;
  }

  redo(): void {
    const label = this.redoLabel;
    this.#history = redoStep(this.#history);
    if (label) this.announcement = `Done again: ${label}.`;
  }

  cell(id: CellId | null): Cell | null {
    return this.book.cells.find((cell) => cell.id === id) ?? null;
  }

  cellsOfKind<K extends CellKind>(kind: K): readonly CellOf<K>[] {
    return this.book.cells.filter((cell): cell is CellOf<K> => cell.kind === kind);
  }

  evaluation(id: CellId): Evaluation {
    return this.evaluations.get(id) ?? { state: 'ready' };
  }

  /** The run of a pour cell. */
  run(id: CellId): PourRun {
    const evaluation = this.evaluation(id);
    if (evaluation.state !== 'needs a run') return this.#idleRun(id);
    const { planHash } = evaluation;
    const kept = this.queue.records.get(planHash);
    const done = this.queue.progress.get(planHash);
    const error = this.queue.failures.get(planHash) ?? null;
    const shown = kept ?? this.#shown.get(id);
    return {
      record: error ? null : (shown?.record ?? null),
      state: runState(kept, done, error, shown !== undefined),
      done: done ?? (kept && !kept.coarse ? 1 : 0),
      error,
      coarse: shown?.coarse ?? false,
      current: kept !== undefined,
      change: shown && !kept ? changeSince(shown.record, evaluation.plan) : null,
    };
  }

  /** A blocked pour keeps its last record in sight. */
  #idleRun(id: CellId): PourRun {
    const shown = this.#shown.get(id);
    const record = shown?.record ?? null;
    const state = record ? 'out of date' : 'none';
    return {
      record,
      state,
      done: 0,
      error: null,
      coarse: shown?.coarse ?? false,
      current: false,
      change: null,
    };
  }

  /** Ends the run and keeps what is done. */
  stop(id: CellId): void {
    const planHash = this.planHash(id);
    if (planHash) this.queue.stop(planHash);
  }

  /** Runs a stopped or failed pour again. */
  again(id: CellId): void {
    const planHash = this.planHash(id);
    if (planHash) this.queue.again(planHash);
  }

  planHash(id: CellId): string | null {
    const evaluation = this.evaluation(id);
    return evaluation.state === 'needs a run' ? evaluation.planHash : null;
  }

  /** The cell that is being read, for the rail; null before any has been seen. */
  here: CellId | null = $state(null);

  /** Cells in view run first. */
  setVisible(id: CellId, isVisible: boolean): void {
    if (this.#visible.has(id) === isVisible) return;
    const next = new Set(this.#visible);
    if (isVisible) next.add(id);
    else next.delete(id);
    this.#visible = next;
  }

  /** Keeps the runs in step with the book. Call once, inside a component's effect. */
  keepRunning(): void {
    const pours = this.cellsOfKind('pour').map(({ id }) => id);
    const ordered = [...pours.filter((id) => this.#visible.has(id)), ...pours];
    const wanted = new Map(
      ordered.flatMap((id) => {
        const evaluation = this.evaluation(id);
        return evaluation.state === 'needs a run' ? [[evaluation.planHash, evaluation] as const] : [];
      }),
    );
    this.queue.want([...wanted.values()]);
  }

  /** Remembers what each pour shows, so that it stays in sight when the next change comes. */
  keepShown(): void {
    const shown = untrack(() => this.#shown);
    const next = new Map(shown);
    for (const { id } of this.cellsOfKind('pour')) {
      const kept = this.queue.records.get(this.planHash(id) ?? '');
      if (kept) next.set(id, kept);
    }
    if ([...next].some(([id, kept]) => shown.get(id) !== kept)) this.#shown = next;
  }
}

/** Worked out once for each pair; a run reports progress many times a second. */
const changeSince = remember((record: PourRecord, plan: PourPlan) => planChange(record.plan, plan));

function runState(
  kept: Kept | undefined,
  done: number | undefined,
  error: string | null,
  hasOld: boolean,
): RunState {
  if (error) return 'failed';
  if (kept?.stopped) return 'stopped';
  if (done !== undefined) return 'running';
  if (kept && !kept.coarse) return 'fresh';
  return kept || !hasOld ? 'waiting' : 'out of date';
}

export const bench = new Bench();
