import type { Evaluation } from '$src/cells/evaluate';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
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
  /** What the record was made from and what it would be made from now; null when it is current or there is none. */
  readonly outdated: Outdated | null;
}

export interface Outdated {
  readonly before: PourPlan;
  readonly now: PourPlan;
}

/**
 * The run of one pour cell. Every field is watched by itself: progress, which comes many times a second, redraws only
 * what shows progress, and not the charts of the record. The fields are told and not derived: all that is drawn of a
 * record hangs on them, and each move of a hand that drags would ask all of it whether the record is another.
 */
export class CellRun implements PourRun {
  record: PourRecord | null = $state.raw(null);
  state: RunState = $state('none');
  done: number = $state(0);
  error: string | null = $state(null);
  coarse: boolean = $state(false);
  current: boolean = $state(false);
  readonly outdated: Outdated | null = $derived.by(() =>
    this.#last && !this.current && this.#plan ? { before: this.#last.plan, now: this.#plan } : null,
  );
  #plan: PourPlan | null = $state.raw(null);
  /** Also when the run of the present plan has failed. */
  #last: PourRecord | null = $state.raw(null);
  /** The last that the cell showed, of whatever plan. */
  #shown: Kept | undefined;

  /** Tells it what its cell comes to, and what the queue has for that. */
  take(evaluation: Evaluation, { records, progress, failures }: PourQueue): void {
    const needed = evaluation.state === 'needs a run' ? evaluation : null;
    const kept = needed ? records.get(needed.planHash) : undefined;
    const share = needed ? progress.get(needed.planHash) : undefined;
    const error = (needed && failures.get(needed.planHash)) ?? null;
    const shown = kept ?? this.#shown;
    const last = shown?.record ?? null;
    this.#shown = shown;
    this.#plan = needed?.plan ?? null;
    this.#last = last;
    this.error = error;
    this.record = error === null ? last : null;
    this.coarse = shown?.coarse ?? false;
    this.current = kept !== undefined;
    this.done = share ?? (kept && !kept.coarse ? 1 : 0);
    if (needed) this.state = runState(kept, share !== undefined, error !== null, shown !== undefined);
    else this.state = shown ? 'out of date' : 'none';
  }

  /** Forgets what was shown, as when another book is opened. */
  forget(): void {
    this.#shown = undefined;
  }
}

function runState(kept: Kept | undefined, isRunning: boolean, hasFailed: boolean, hasOld: boolean): RunState {
  if (hasFailed) return 'failed';
  if (kept?.stopped) return 'stopped';
  if (isRunning) return 'running';
  if (kept && !kept.coarse) return 'fresh';
  return kept || !hasOld ? 'waiting' : 'out of date';
}
