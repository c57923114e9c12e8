import type { Evaluation } from '$src/cells/evaluate';
import type { CellId } from '$src/cells/kinds';
import { remember } from '$src/cells/remember';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import type { PageUnits } from '$src/core/units';
import { planChange } from './planChange';
import type { Kept, PourQueue } from './pourQueue.svelte';

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

/** What a run reads of the bench. */
export interface RunSource {
  readonly queue: PourQueue;
  readonly units: PageUnits;
  evaluation(id: CellId): Evaluation;
  /** The last record the cell showed. */
  shown(id: CellId): Kept | undefined;
}

/** Worked out once for each pair. */
const changeSince = remember((record: PourRecord, plan: PourPlan, units: PageUnits) =>
  planChange(record.plan, plan, units),
);

/**
 * The run of one pour cell. Every field is watched by itself: progress, which comes many times a second, redraws only
 * what shows progress, and not the charts of the record.
 */
export class CellRun implements PourRun {
  readonly #source: RunSource;
  readonly #id: CellId;

  readonly #needed = $derived.by(() => {
    const evaluation = this.#source.evaluation(this.#id);
    return evaluation.state === 'needs a run' ? evaluation : null;
  });
  readonly #kept: Kept | undefined = $derived.by(() =>
    this.#needed ? this.#source.queue.records.get(this.#needed.planHash) : undefined,
  );
  readonly #shown: Kept | undefined = $derived.by(() => this.#kept ?? this.#source.shown(this.#id));
  readonly #progress: number | undefined = $derived.by(() =>
    this.#needed ? this.#source.queue.progress.get(this.#needed.planHash) : undefined,
  );

  readonly error: string | null = $derived.by(
    () => (this.#needed && this.#source.queue.failures.get(this.#needed.planHash)) ?? null,
  );
  readonly record: PourRecord | null = $derived.by(() => (this.error ? null : (this.#shown?.record ?? null)));
  readonly coarse: boolean = $derived.by(() => this.#shown?.coarse ?? false);
  readonly current: boolean = $derived.by(() => this.#kept !== undefined);
  readonly done: number = $derived.by(() => this.#progress ?? (this.#kept && !this.#kept.coarse ? 1 : 0));
  readonly state: RunState = $derived.by(() => {
    if (!this.#needed) return this.#shown ? 'out of date' : 'none';
    return runState(this.#kept, this.#progress !== undefined, this.error !== null, this.#shown !== undefined);
  });
  readonly change: string | null = $derived.by(() =>
    this.#shown && !this.#kept && this.#needed
      ? changeSince(this.#shown.record, this.#needed.plan, this.#source.units)
      : null,
  );

  constructor(source: RunSource, id: CellId) {
    this.#source = source;
    this.#id = id;
  }
}

function runState(kept: Kept | undefined, isRunning: boolean, hasFailed: boolean, hasOld: boolean): RunState {
  if (hasFailed) return 'failed';
  if (kept?.stopped) return 'stopped';
  if (isRunning) return 'running';
  if (kept && !kept.coarse) return 'fresh';
  return kept || !hasOld ? 'waiting' : 'out of date';
}
