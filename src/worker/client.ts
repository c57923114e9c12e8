import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord, Progress } from '$src/core/pour/record';

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

export declare function createPourClient(): PourClient;
