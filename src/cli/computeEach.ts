import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Remote, wrap } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import type { PourWorker } from './pour.worker';

/** What is to be kept of a pour; records are large, so a study keeps only their figures. */
export interface Keep<T> {
  readonly record: (record: PourRecord) => T;
  /** A pour the solver refused; without it the whole computation ends there. */
  readonly refused?: (reason: string) => T;
}

/** Computes pours on all cores, one worker each; answers in the order given. Rejects when a worker dies. */
export async function computeEach<T>(plans: readonly PourPlan[], keep: Keep<T>): Promise<T[]> {
  const kept: T[] = [];
  const waiting = [...plans.entries()];
  const seats = Array.from({ length: Math.min(availableParallelism(), plans.length) }, async () => {
    await withWorker(async (worker) => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const [index, plan] = next;
        kept[index] = await computeOne(worker, plan, keep);
      }
    });
  });
  await Promise.all(seats);
  return kept;
}

async function computeOne<T>(worker: Remote<PourWorker>, plan: PourPlan, keep: Keep<T>): Promise<T> {
  try {
    return keep.record(await worker.run(plan));
  } catch (error) {
    if (!keep.refused) throw error;
    return keep.refused(error instanceof Error ? error.message : String(error));
  }
}

/** A dead worker answers nothing, so its end is awaited beside its work. */
async function withWorker(use: (worker: Remote<PourWorker>) => Promise<void>): Promise<void> {
  const thread = new Worker(new URL('./pour.worker.js', import.meta.url));
  const death = new Promise<never>((_, reject) => {
    thread.once('error', reject);
    thread.once('exit', (code) => reject(new Error(`A worker ended by itself with code ${code}.`)));
  });
  try {
    await Promise.race([use(wrap<PourWorker>(nodeEndpoint(thread))), death]);
  } finally {
    death.catch(() => undefined);
    await thread.terminate();
  }
}
