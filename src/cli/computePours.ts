import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Remote, wrap } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { PourRecord } from '$src/core/pour/record';
import type { NamedPlan } from './choosePours';
import type { PourWorker } from './pour.worker';

export interface ComputedPour {
  readonly name: string;
  readonly record: PourRecord;
}

/** Computes pours on all cores, one worker each; answers in the order given. Rejects when a worker dies. */
export async function computePours(plans: readonly NamedPlan[]): Promise<ComputedPour[]> {
  const computed: ComputedPour[] = [];
  const waiting = plans.map((named, index) => ({ ...named, index }));
  const seats = Array.from({ length: Math.min(availableParallelism(), plans.length) }, async () => {
    await withWorker(async (worker) => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        computed[next.index] = { name: next.name, record: await worker.run(next.plan) };
      }
    });
  });
  await Promise.all(seats);
  return computed;
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
