import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord, Progress } from '$src/core/pour/record';

/** A pour that was asked for, waiting or under way. */
export interface Job {
  readonly plan: PourPlan;
  readonly onProgress: (progress: Progress) => void;
  readonly resolve: (record: PourRecord) => void;
  readonly reject: (error: Error) => void;
  /** Set by `stop`, also while the pour still waits. */
  stopAsked: boolean;
  /** Stops it where it runs; null while it waits. */
  stopRunning: (() => void) | null;
}
