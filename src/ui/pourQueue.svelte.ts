import { SvelteMap } from 'svelte/reactivity';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { fromMilliseconds } from '$src/core/units';
import type { PourClient, RunningPour } from '$src/worker/client';
import { Pace } from './pace';

/** A pour the book asks for. `planHash` is the hash of the full plan, not of its coarse preview. */
export interface Wanted {
  readonly planHash: string;
  readonly plan: PourPlan;
  /** Somebody looks at it now: it is run on the coarse mesh first, so that there is soon something to see. */
  readonly isSeen: boolean;
}

/** A record in the page's memory. */
export interface Kept {
  readonly record: PourRecord;
  /** From the coarse mesh, shown until the full run is done. */
  readonly coarse: boolean;
  /** Stopped by the user: not run again by itself. */
  readonly stopped: boolean;
}

interface Job {
  readonly planHash: string;
  readonly coarse: boolean;
  readonly running: RunningPour;
  stoppedByUser: boolean;
}

/** Records are some megabytes each; beyond this the ones longest unused go. */
const RECORDS_KEPT = 24;
/** Changes wait this long for the next one before a run starts [ms]. */
const PAUSE = 300;
/** Progress smaller than this share is not worth a redraw. */
const PROGRESS_STEP = 0.01;

/** Finished records kept from earlier visits, by plan hash. Neither may reject. */
export interface StoredRecords {
  get(planHash: string): Promise<PourRecord | null>;
  put(planHash: string, record: PourRecord): Promise<void>;
}

/** Runs the pours the book asks for, first ones first, those on show coarse before full, and keeps their records. */
export class PourQueue {
  /** Each key is watched by itself: a record that arrives redraws only what shows it. */
  readonly records = new SvelteMap<string, Kept>();
  /** Share done of the runs under way, by plan hash. */
  readonly progress = new SvelteMap<string, number>();
  readonly failures = new SvelteMap<string, string>();
  /** How long coarse runs took; a full one repeats its pour for the band and tells less of others. */
  readonly coarsePace = new Pace();

  #wanted: readonly Wanted[] = [];
  #jobs: Job[] = [];
  #client: PourClient | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #makeClient: () => Promise<PourClient>;
  readonly #atOnce: number;
  readonly #stored: StoredRecords | null;
  /** Wanted pours that the store is asked for, and those it was asked for in vain. */
  #looking: ReadonlySet<string> = new Set();
  #unknown: ReadonlySet<string> = new Set();

  constructor(makeClient: () => Promise<PourClient>, atOnce: number, stored: StoredRecords | null = null) {
    this.#makeClient = makeClient;
    this.#atOnce = atOnce;
    this.#stored = stored;
  }

  /** Says which pours are wanted, most urgent first. Runs nobody wants any more end at once. */
  want(wanted: readonly Wanted[]): void {
    const isNew = wanted.some((pour) => !this.#wanted.some((old) => old.planHash === pour.planHash));
    const isFirst = this.#wanted.length === 0;
    this.#wanted = wanted;
    this.#unknown = new Set([...this.#unknown].filter((planHash) => this.#isWanted(planHash)));
    for (const job of this.#jobs) if (!this.#isWanted(job.planHash)) this.#drop(job);
    if (!isNew) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#startNext(), isFirst ? 0 : PAUSE);
  }

  /** Ends the run of this plan and keeps what is done. */
  stop(planHash: string): void {
    for (const job of this.#jobs.filter((job) => job.planHash === planHash)) {
      job.stoppedByUser = true;
      job.running.stop();
    }
  }

  /** Forgets what a stopped or failed run left, and runs it again. */
  again(planHash: string): void {
    this.records.delete(planHash);
    this.failures.delete(planHash);
    this.#startNext();
  }

  #isWanted(planHash: string): boolean {
    return this.#wanted.some((pour) => pour.planHash === planHash);
  }

  #drop(job: Job): void {
    this.#jobs = this.#jobs.filter((other) => other !== job);
    this.progress.delete(job.planHash);
    job.running.stop();
  }

  #nextPour(): { pour: Wanted; coarse: boolean } | null {
    const idle = this.#wanted.filter(
      ({ planHash }) =>
        !this.failures.has(planHash) &&
        !this.#looking.has(planHash) &&
        !this.#jobs.some((job) => job.planHash === planHash),
    );
    const seen = idle.filter(({ isSeen }) => isSeen);
    return this.#nextOf(seen) ?? this.#nextOf(idle);
  }

  #nextOf(pours: readonly Wanted[]): { pour: Wanted; coarse: boolean } | null {
    const unknown = pours.find(({ planHash }) => !this.records.has(planHash));
    if (unknown) return { pour: unknown, coarse: isPreviewed(unknown) };
    const rough = pours.find(({ planHash }) => {
      const kept = this.records.get(planHash);
      return kept?.coarse && !kept.stopped;
    });
    return rough ? { pour: rough, coarse: false } : null;
  }

  /** Takes what the store has of the wanted pours, so that nothing is computed twice. */
  async #lookUp(): Promise<void> {
    const asked = this.#wanted
      .map(({ planHash }) => planHash)
      .filter((planHash) => [this.records, this.#looking, this.#unknown].every((all) => !all.has(planHash)));
    if (!this.#stored || asked.length === 0) return;
    this.#looking = new Set([...this.#looking, ...asked]);
    await Promise.all(asked.map((planHash) => this.#take(planHash)));
  }

  async #take(planHash: string): Promise<void> {
    const record = await this.#stored?.get(planHash);
    this.#looking = new Set([...this.#looking].filter((other) => other !== planHash));
    if (!this.#isWanted(planHash)) return;
    if (record) this.records.set(planHash, { record, coarse: false, stopped: false });
    else this.#unknown = new Set([...this.#unknown, planHash]);
  }

  async #startNext(): Promise<void> {
    await this.#lookUp();
    if (!this.#nextPour()) return;
    try {
      this.#client ??= await this.#makeClient();
    } catch (error) {
      this.#failAll(readable(error));
      return;
    }
    for (let next = this.#nextPour(); next && this.#mayStart(next); next = this.#nextPour())
      this.#start(this.#client, next.pour, next.coarse);
  }

  /** A first look at what is on show joins the full runs under way, which may take a minute on a fine mesh. */
  #mayStart({ coarse }: { coarse: boolean }): boolean {
    const isFull = this.#jobs.length >= this.#atOnce;
    return (
      !isFull || (coarse && this.#jobs.length === this.#atOnce && this.#jobs.every((job) => !job.coarse))
    );
  }

  #failAll(reason: string): void {
    for (const { planHash } of this.#wanted) this.failures.set(planHash, reason);
  }

  #start(client: PourClient, { planHash, plan }: Wanted, coarse: boolean): void {
    const asked = coarse ? withMesh(plan, PREVIEW_MESH_CELLS) : plan;
    const begin = performance.now();
    const running = client.run(asked, ({ done }) => this.#advance(planHash, done));
    const job: Job = { planHash, coarse, running, stoppedByUser: false };
    this.#jobs = [...this.#jobs, job];
    this.progress.set(planHash, 0);
    running.done.then(
      (record) => {
        if (coarse && !job.stoppedByUser)
          this.coarsePace.note(fromMilliseconds(performance.now() - begin), PREVIEW_MESH_CELLS);
        this.#finish(job, record);
      },
      (error: unknown) => this.#fail(job, readable(error)),
    );
  }

  #advance(planHash: string, done: number): void {
    const before = this.progress.get(planHash);
    if (before === undefined || done - before < PROGRESS_STEP) return;
    this.progress.set(planHash, done);
  }

  #finish(job: Job, record: PourRecord): void {
    if (!this.#leave(job)) return;
    const kept = { record, coarse: job.coarse, stopped: job.stoppedByUser };
    // Taken out first, so that the newest stand last and the ones longest unused go first.
    this.records.delete(job.planHash);
    this.records.set(job.planHash, kept);
    if (!kept.coarse && !kept.stopped) void this.#stored?.put(job.planHash, record);
    this.#trim();
    this.#startNext();
  }

  #fail(job: Job, reason: string): void {
    if (!this.#leave(job)) return;
    this.failures.set(job.planHash, reason);
    this.#startNext();
  }

  /** Takes the job off the list; false when it was dropped before. */
  #leave(job: Job): boolean {
    if (!this.#jobs.includes(job)) return false;
    this.#jobs = this.#jobs.filter((other) => other !== job);
    this.progress.delete(job.planHash);
    return true;
  }

  #trim(): void {
    const spare = [...this.records.keys()].filter((planHash) => !this.#isWanted(planHash));
    const over = Math.max(0, this.records.size - RECORDS_KEPT);
    for (const planHash of spare.slice(0, over)) this.records.delete(planHash);
  }
}

function isPreviewed({ plan, isSeen }: Wanted): boolean {
  return isSeen && plan.computation.meshCells > PREVIEW_MESH_CELLS;
}

function withMesh(plan: PourPlan, meshCells: number): PourPlan {
  return { ...plan, computation: { ...plan.computation, meshCells } };
}

function readable(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
