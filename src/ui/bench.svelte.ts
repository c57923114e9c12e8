import { untrack } from 'svelte';
import { SvelteMap } from 'svelte/reactivity';
import { version } from '$app/environment';
import { type Evaluation, evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellId, CellKind } from '$src/cells/kinds';
import { lockBroken } from '$src/cells/locks';
import { needsOf } from '$src/cells/needs';
import type { FrontSketch } from '$src/core/pour/record';
import { METRIC, type PageUnits } from '$src/core/units';
import { CellRun, type PourRun } from './cellRun.svelte';
import { BookOrder, CellSlot, KindList } from './cellSlot.svelte';
import { poursAtOnce } from './cores';
import { beginHistory, type History, recordStep, redoStep, settle, undoStep } from './history';
import { FrontSketches } from './live/frontSketches.svelte';
import { makeClient, makeSketchClient } from './pour/clients';
import { putRecord, recordOf } from './pour/keptRecords';
import { PourQueue, type Wanted } from './pourQueue.svelte';

export type CellOf<K extends CellKind> = Extract<Cell, { kind: K }>;

const EMPTY: Book = { title: 'New book', casting: '', cells: [] };

const READY: Evaluation = { state: 'ready' };

/** One cell with its run. */
class Slot extends CellSlot {
  readonly run = new CellRun();

  /** Tells the cell's run what the cell comes to, and what the queue has for that. A cell that has gone holds no record. */
  tellRun(queue: PourQueue): void {
    if (this.cell === null) this.run.forget();
    this.run.take(this.evaluation, queue);
  }
}

/** The page's one store: the book, what its cells come to, and their runs. */
export class Bench {
  #history: History<Book> = $state.raw(beginHistory(EMPTY));
  readonly book: Book = $derived(this.#history.now);
  evaluations: ReadonlyMap<CellId, Evaluation> = $state.raw(new Map());
  readonly undoLabel: string | null = $derived(this.#history.past.at(-1)?.label ?? null);
  readonly redoLabel: string | null = $derived(this.#history.future[0]?.label ?? null);
  readonly canUndo: boolean = $derived(this.undoLabel !== null);
  readonly canRedo: boolean = $derived(this.redoLabel !== null);
  /** What lengths, masses and temperatures are shown and typed in. */
  units: PageUnits = $state.raw(METRIC);
  #announcement: string = $state('');
  /** Said once by the live region, e.g. "Undone: charge changed". */
  get announcement(): string {
    return this.#announcement;
  }

  /** What is said a second time must differ, or a live region keeps silent: two steps of one name that are undone. */
  set announcement(text: string) {
    this.#announcement = text === this.#announcement ? `${text}\u00a0` : text;
  }

  readonly queue = new PourQueue(makeClient, poursAtOnce(), {
    // Another version may compute other figures, so what it kept is not taken.
    get: (planHash) => recordOf(version, planHash),
    put: (planHash, record) => putRecord(version, planHash, record),
  });
  /** Curves that follow a hand while it drags. */
  readonly sketches = new FrontSketches(makeSketchClient);
  readonly #slots = new Map<CellId, Slot>();
  readonly #order = new BookOrder();
  readonly #kinds: Readonly<Record<CellKind, KindList>> = {
    note: new KindList('note'),
    section: new KindList('section'),
    metal: new KindList('metal'),
    charge: new KindList('charge'),
    tilt: new KindList('tilt'),
    pour: new KindList('pour'),
    compare: new KindList('compare'),
    study: new KindList('study'),
    'shop card': new KindList('shop card'),
    castings: new KindList('castings'),
    guess: new KindList('guess'),
  };
  #visible: ReadonlySet<CellId> = $state.raw(new Set());

  /** How many books were opened so far: what is said of one does not hold for the next. */
  opened = $state(0);

  /** The book with all that can be taken back. */
  get history(): History<Book> {
    return this.#history;
  }

  /** Replaces the whole book, without an undo step. `past` is what was done to this very book before. */
  open(book: Book, past: History<Book> = beginHistory(book)): void {
    this.opened++;
    for (const { run } of this.#slots.values()) run.forget();
    this.#turnTo(past);
  }

  /**
   * Slots are made here, where a change is made, and not where they are first read: a value made inside an effect is
   * not watched by it.
   */
  #turnTo(history: History<Book>): void {
    for (const { id } of history.now.cells) {
      if (!this.#slots.has(id)) this.#slots.set(id, new Slot());
    }
    this.#history = history;
    const { now } = history;
    const cells = new Map(now.cells.map((cell) => [cell.id, cell]));
    this.evaluations = evaluateBook(now);
    this.units = now.units ?? METRIC;
    this.#order.take(now, needsOf);
    for (const list of Object.values(this.#kinds)) list.take(now);
    for (const [id, slot] of this.#slots) slot.take(cells.get(id), this.evaluations.get(id));
    untrack(() => {
      for (const slot of this.#slots.values()) slot.tellRun(this.queue);
    });
  }

  /** Ids of the cells from the top down; the same list until one comes, goes or moves. */
  get ids(): readonly CellId[] {
    return this.#order.ids;
  }

  /** Which cells take which; the same until that changes. */
  get takers(): ReadonlyMap<CellId, readonly CellId[]> {
    return this.#order.takers;
  }

  /** One undo step. Consecutive changes with the same merge key (a drag, typing) become one. */
  change(label: string, next: (book: Book) => Book, merge: string | null = null): void {
    const book = next(this.book);
    if (book === this.book) return;
    const locked = lockBroken(this.book, book);
    if (locked) this.announcement = `${locked.name} is locked. Unlock it in its menu to change it.`;
    else this.#turnTo(recordStep(this.#history, label, book, merge));
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
    this.sketches.release();
    this.#history = settle(this.#history);
  }

  /** Something is being dragged: full runs wait until `settle`, sketches follow the hand. */
  hold(): void {
    this.sketches.hold();
  }

  /** The sketch of a pour's front while its full run is not there; null when there is none. */
  sketch(id: CellId): FrontSketch | null {
    const found = this.sketches.sketched.get(id);
    if (!found || this.run(id).current) return null;
    return this.sketches.isHeld || found.planHash === this.planHash(id) ? found.sketch : null;
  }

  undo(): void {
    const label = this.undoLabel;
    this.#turnTo(undoStep(this.#history));
    if (label) this.announcement = `Undone: ${label}.`;
  }

  redo(): void {
    const label = this.redoLabel;
    this.#turnTo(redoStep(this.#history));
    if (label) this.announcement = `Done again: ${label}.`;
  }

  cell(id: CellId | null): Cell | null {
    if (id === null) return null;
    const slot = this.#slots.get(id);
    return slot ? slot.cell : (this.book.cells.find((cell) => cell.id === id) ?? null);
  }

  cellsOfKind<K extends CellKind>(kind: K): readonly CellOf<K>[] {
    return this.#kinds[kind].cells as readonly CellOf<K>[];
  }

  evaluation(id: CellId): Evaluation {
    const slot = this.#slots.get(id);
    return slot ? slot.evaluation : (this.evaluations.get(id) ?? READY);
  }

  /** The run of a pour cell; the same object for as long as the page is open. */
  run(id: CellId): PourRun {
    return this.#slots.get(id)?.run ?? new CellRun();
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

  /** Some of the cell is in the window. */
  isVisible(id: CellId): boolean {
    return this.#visible.has(id);
  }

  /** Something is held by the hand, and the cell is out of the window. */
  isAway(id: CellId): boolean {
    return this.sketches.isHeld && !this.isVisible(id);
  }

  /** Cells in view run first. */
  setVisible(id: CellId, isVisible: boolean): void {
    if (this.#visible.has(id) === isVisible) return;
    const next = new Set(this.#visible);
    if (isVisible) next.add(id);
    else next.delete(id);
    this.#visible = next;
  }

  /** Pours whose front is shown beside another cell; they too are sketched while something is held. */
  readonly #watched = new SvelteMap<CellId, CellId>();

  /** `by` shows the front of that pour at present, or none. */
  setWatched(by: CellId, pour: CellId | null): void {
    if (pour === null) this.#watched.delete(by);
    else this.#watched.set(by, pour);
  }

  /** Makes the worker of the sketches ready, by one sketch of each front on show: the first of a drag would come late. */
  warmSketches(): void {
    for (const id of new Set(this.#watched.values())) this.#askSketch(id);
  }

  #askSketch(id: CellId): void {
    const evaluation = this.evaluation(id);
    // What a front-led pour turns like is known only once it has been run.
    if (evaluation.state !== 'needs a run' || evaluation.plan.tilt.kind === 'front-led') return;
    untrack(() => this.sketches.ask(id, evaluation.plan, evaluation.planHash));
  }

  /** Sketches the pours in view while something is held. Call once, inside a component's effect. */
  keepSketching(): void {
    if (!this.sketches.isHeld) return;
    const inView = new Set([...this.#watched.values(), ...this.#visible]);
    for (const { id } of this.cellsOfKind('pour')) if (inView.has(id)) this.#askSketch(id);
  }

  /** Keeps the runs in step with the book, while they may run. Call once, inside a component's effect. */
  keepRunning(mayRun: boolean): void {
    if (!mayRun || this.sketches.isHeld) {
      untrack(() => this.queue.want([]));
      return;
    }
    const pours = this.cellsOfKind('pour').map(({ id }) => id);
    const wanted = new Map<string, Wanted>();
    for (const id of [...pours.filter((id) => this.#visible.has(id)), ...pours]) {
      const evaluation = this.evaluation(id);
      if (evaluation.state !== 'needs a run') continue;
      const { planHash, plan } = evaluation;
      // Two cells may ask for the same pour.
      const isSeen = this.#isSeen(id) || (wanted.get(planHash)?.isSeen ?? false);
      wanted.set(planHash, { planHash, plan, isSeen });
    }
    untrack(() => this.queue.want([...wanted.values()]));
  }

  /** The window shows the pour, a cell that takes it, or its front beside another cell. */
  #isSeen(pour: CellId): boolean {
    const takers = this.takers.get(pour) ?? [];
    return (
      [pour, ...takers].some((id) => this.#visible.has(id)) || [...this.#watched.values()].includes(pour)
    );
  }

  /** Tells each pour's run what the queue has for it. Call once, inside a component's effect. */
  tellRuns(): void {
    for (const { id } of this.cellsOfKind('pour')) this.#slots.get(id)?.tellRun(this.queue);
  }
}

export const bench = new Bench();
