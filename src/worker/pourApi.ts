import { releaseProxy, transfer } from 'comlink';
import type { PourPlan } from '$src/core/pour/plan';
import type { FrontSketch, PourRecord, Progress } from '$src/core/pour/record';
import { buffersOf } from './buffersOf';
import { nextTask } from './nextTask';
import type { PourApi } from './protocol';

export type Simulate = (plan: PourPlan) => Generator<Progress, PourRecord, { stop: boolean } | undefined>;

export type SketchFront = (plan: PourPlan) => FrontSketch;

/** How long a pour computes before the worker looks at its messages [ms]: short enough for a prompt stop. */
const CHUNK = 25;
/** Shortest time between two reports of progress [ms]. */
const REPORT_EVERY = 50;

/** The worker's side of the protocol around a solver. It holds no thread: the same code runs in a test. */
export function createPourApi(simulate: Simulate, sketchFront: SketchFront): PourApi {
  let stopAsked = false;

  async function run(plan: PourPlan, report: (progress: Progress) => void): Promise<PourRecord> {
    const pour = simulate(plan);
    let step = computeChunk(pour, undefined);
    while (!step.done) {
      report(step.value);
      await nextTask();
      step = computeChunk(pour, stopAsked ? { stop: true } : undefined);
    }
    return step.value;
  }

  return {
    async run(plan, onProgress) {
      stopAsked = false;
      try {
        const record = await run(plan, spaced(onProgress));
        return transfer(record, buffersOf(record));
      } finally {
        release(onProgress);
      }
    },
    front(plan) {
      const sketch = sketchFront(plan);
      return transfer(sketch, buffersOf(sketch));
    },
    stop() {
      stopAsked = true;
    },
    ping: () => true,
  };
}

type Pour = ReturnType<Simulate>;

/** Lets the pour compute for one chunk of time, or to its end. */
function computeChunk(
  pour: Pour,
  message: { stop: boolean } | undefined,
): IteratorResult<Progress, PourRecord> {
  const until = performance.now() + CHUNK;
  let step = pour.next(message);
  while (!step.done && performance.now() < until) step = pour.next(message);
  return step;
}

/** Leaves out reports that would come too soon after the last one. */
function spaced(onProgress: (progress: Progress) => void): (progress: Progress) => void {
  let last = Number.NEGATIVE_INFINITY;
  return (progress) => {
    const now = performance.now();
    if (now - last < REPORT_EVERY) return;
    last = now;
    onProgress(progress);
  };
}

/** A callback from another thread holds a message port open until it is released. */
function release(callback: object): void {
  if (releaseProxy in callback) (callback as { [releaseProxy]: () => void })[releaseProxy]();
}
