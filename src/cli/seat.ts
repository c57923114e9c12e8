import { Worker } from 'node:worker_threads';
import { type Remote, wrap } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import type { PourWorker } from './pour.worker';

/** One worker that computes one pour after another. */
export interface Seat {
  /** Rejects when the solver refuses the pour. */
  run(plan: PourPlan): Promise<PourRecord>;
  /** Rejects when the worker dies. A dead worker answers nothing, so its end is awaited beside its work. */
  readonly death: Promise<never>;
  close(): Promise<unknown>;
}

export function openSeat(): Seat {
  const thread = new Worker(new URL('./pour.worker.js', import.meta.url));
  const worker: Remote<PourWorker> = wrap<PourWorker>(nodeEndpoint(thread));
  const death = new Promise<never>((_, reject) => {
    thread.once('error', reject);
    thread.once('exit', (code) => reject(new Error(`A worker ended by itself with code ${code}.`)));
  });
  death.catch(() => undefined);
  return {
    run: (plan) => worker.run(plan),
    death,
    close: () => thread.terminate(),
  };
}
