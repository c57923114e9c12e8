import { proxy, type Remote, releaseProxy, wrap } from 'comlink';
import type { Job } from './job';
import type { PourApi } from './protocol';
import { watchForSilence } from './silence';

/** One worker and the pour it is busy with. The worker and its proxy are held here for as long as the seat lives. */
export interface Seat {
  isFree(): boolean;
  start(job: Job): void;
  /** Gives up the pour under way with this reason and closes the worker. */
  end(reason: Error): void;
}

export interface SeatEvents {
  /** The pour is done, another may start. */
  free(): void;
  /** The worker could not be loaded or died; the seat is closed and its pour rejected. */
  broken(seat: Seat): void;
}

const NOT_LOADED =
  'The worker that computes pours could not be loaded, so nothing was computed. Reload the page; if that does not help, start Quietpour again.';
const SILENT =
  'The worker that computes pours has not answered for a minute and was closed, so this pour has no result. Run it again.';
const UNREADABLE = 'What the pour worker sent could not be read, so this pour has no result. Run it again.';

const crashed = (event: Event): string =>
  `The worker that computes pours broke off (${(event as ErrorEvent).message || 'no reason given'}), so this pour has no result. Run it again.`;

const NO_ROOM =
  'There was not enough memory for this pour, so it has no result. Close other pages or give it fewer mesh cells, then run it again.';

/** A worker that asks for more memory than there is goes on afterwards; only the pour is lost. */
const isShortage = (error: Error): boolean =>
  /memory|allocation|array length|buffer length/i.test(error.message);

function refusalOf(error: unknown): Error {
  const own = error instanceof Error ? error : new Error(String(error));
  return isShortage(own) ? new Error(NO_ROOM, { cause: own }) : own;
}

/** Opens the worker at once. Throws a readable Error when the browser refuses to. */
export function openSeat(openWorker: () => Worker, events: SeatEvents): Seat {
  const worker = open(openWorker);
  const solver = wrap<PourApi>(worker);
  let job: Job | null = null;
  let isLoaded = false;
  const silence = watchForSilence({ ping: () => solver.ping(), onSilence: () => breakDown(SILENT) });

  worker.addEventListener('error', (event) => breakDown(isLoaded ? crashed(event) : NOT_LOADED));
  worker.addEventListener('messageerror', () => breakDown(UNREADABLE));
  void solver.ping().then(() => {
    isLoaded = true;
  });

  function start(next: Job): void {
    job = next;
    next.stopRunning = () => void solver.stop();
    silence.listen();
    void runJob(solver, next, () => job === next && silence.heard()).finally(() => {
      if (job !== next) return;
      job = null;
      silence.rest();
      events.free();
    });
    if (next.stopAsked) next.stopRunning();
  }

  function breakDown(message: string): void {
    seat.end(new Error(message));
    events.broken(seat);
  }

  const seat: Seat = {
    isFree: () => job === null,
    start,
    end(reason) {
      silence.rest();
      job?.reject(reason);
      job = null;
      solver[releaseProxy]();
      worker.terminate();
    },
  };
  return seat;
}

function open(openWorker: () => Worker): Worker {
  try {
    return openWorker();
  } catch (error) {
    throw new Error(NOT_LOADED, { cause: error });
  }
}

/** Settles the job with what the worker answers. Reports that come after that are dropped: they use another port. */
async function runJob(solver: Remote<PourApi>, job: Job, heard: () => boolean): Promise<void> {
  let isOver = false;
  try {
    const onProgress = proxy((progress: Parameters<Job['onProgress']>[0]) => {
      if (heard() && !isOver) job.onProgress(progress);
    });
    job.resolve(await solver.run(job.plan, onProgress));
  } catch (error) {
    job.reject(refusalOf(error));
  } finally {
    isOver = true;
    job.stopRunning = null;
  }
}
