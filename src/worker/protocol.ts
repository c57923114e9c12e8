import type { PourPlan } from '$src/core/pour/plan';
import type { FrontSketch, PourRecord, Progress } from '$src/core/pour/record';

/** What a pour worker answers to. One pour at a time; the client sees to that. */
export interface PourApi {
  /**
   * Runs one pour to its end. Progress comes at most about 20 times a second.
   * Rejects with the solver's own message when the plan is one that no cell should have let through.
   */
  run(plan: PourPlan, onProgress: (progress: Progress) => void): Promise<PourRecord>;
  /** Runs a pour until its front has arrived, and answers what the front did. */
  front(plan: PourPlan): FrontSketch;
  /** Ends the pour under way; its `run` then resolves with the partial record. Nothing happens when none is. */
  stop(): void;
  /** Answers, to show that the worker is alive. */
  ping(): true;
}
