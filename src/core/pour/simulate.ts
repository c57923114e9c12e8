import type { PourPlan } from './plan';
import type { PourRecord, Progress } from './record';

/**
 * Runs one pour: a generator of progress that returns the record. The worker, the command line and the tests all
 * loop over it. Calling `return()` on it abandons the run; `next({ stop: true })` ends it with a partial record.
 */
export declare function simulate(plan: PourPlan): Generator<Progress, PourRecord, { stop: boolean } | undefined>;
