import { wrap } from 'comlink';
import type { PourPlan } from '$src/core/pour/plan';
import type { FrontSketch, PourRecord, Progress } from '$src/core/pour/record';
import type { Job } from './job';
import type { PourApi } from './protocol';
import { openSeat, type Seat } from './seat';

/** A pour on its way in a worker. */
export interface RunningPour {
  readonly done: Promise<PourRecord>;
  /** Stops the run; `done` then resolves with the partial record, outcome 'stopped by the user'. */
  stop(): void;
}

/** Runs pours in workers, at most one per core, in the order asked for. `done` rejects with a readable Error when the worker cannot be loaded or dies. */
export interface PourClient {
  run(plan: PourPlan, onProgress: (progress: Progress) => void): RunningPour;
  close(): void;
}

/** Sketches fronts in a worker of its own, so that no full run stands in the way. */
export interface SketchClient {
  /** Rejects when the worker cannot be loaded or dies. */
  front(plan: PourPlan): Promise<FrontSketch>;
  close(): void;
}

export interface PourClientSettings {
  /** How many workers at most; one per core up to 8 by default. */
  readonly workers?: number;
  /** Opens a worker; the pour worker of this folder by default. */
  readonly openWorker?: () => Worker;
}

const MOST_WORKERS = 8;

const openPourWorker = (): Worker =>
  new Worker(new URL('./pour.worker.ts', import.meta.url), { type: 'module' });

/** Opens its worker at once. */
export function createSketchClient(openWorker: () => Worker = openPourWorker): SketchClient {
  const worker = openWorker();
  const solver = wrap<PourApi>(worker);
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', () => reject(new Error('The worker that sketches fronts broke off.')));
  });
  broken.catch(() => undefined);
  return {
    front: (plan) => Promise.race([solver.front(plan), broken]),
    close: () => worker.terminate(),
  };
}

/** Opens no worker before the first pour; a worker stays open for the next pour until `close`. */
export function createPourClient(settings: PourClientSettings = {}): PourClient {
  const most = settings.workers ?? Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1);
  const openWorker = settings.openWorker ?? openPourWorker;
  const queue: Job[] = [];
  const seats = new Set<Seat>();

  function startWaiting(): void {
    while (queue.length > 0 && startNext());
  }

  /** Whether a waiting pour was started, or failed because no worker can be opened. */
  function startNext(): boolean {
    try {
      const seat = freeSeat();
      if (seat) seat.start(queue.shift() as Job);
      return seat !== null;
    } catch (error) {
      queue.shift()?.reject(error as Error);
      return true;
    }
  }

  function freeSeat(): Seat | null {
    const free = [...seats].find((seat) => seat.isFree());
    if (free || seats.size >= most) return free ?? null;
    const seat = openSeat(openWorker, { free: startWaiting, broken: leave });
    seats.add(seat);
    return seat;
  }

  /** The next waiting pour gets a new worker: what failed once may have been a matter of the moment. */
  function leave(seat: Seat): void {
    seats.delete(seat);
    startWaiting();
  }

  return {
    run(plan, onProgress) {
      const { job, done } = newJob(plan, onProgress);
      queue.push(job);
      startWaiting();
      return { done, stop: () => stop(job) };
    },
    close() {
      const closed = new Error('The pour was given up because the page closed its workers.');
      for (const job of queue.splice(0)) job.reject(closed);
      for (const seat of seats) seat.end(closed);
      seats.clear();
    },
  };
}

function newJob(plan: PourPlan, onProgress: Job['onProgress']): { job: Job; done: Promise<PourRecord> } {
  let settle: Pick<Job, 'resolve' | 'reject'> | undefined;
  const done = new Promise<PourRecord>((resolve, reject) => {
    settle = { resolve, reject };
  });
  if (!settle) throw new Error('A promise runs its executor at once.');
  return { job: { plan, onProgress, ...settle, stopAsked: false, stopRunning: null }, done };
}

/** A pour that still waits is stopped when its turn comes, so that it too ends with a record. */
function stop(job: Job): void {
  job.stopAsked = true;
  job.stopRunning?.();
}
