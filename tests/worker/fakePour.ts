import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord, Progress } from '$src/core/pour/record';
import type { Simulate } from '$src/worker/pourApi';

/** A record of the right kind in the parts that the worker handles: typed arrays at any depth, NaN, and an outcome. */
export function fakeRecord(outcome: PourRecord['outcome'], steps: number): PourRecord {
  const time = Float64Array.from({ length: 64 }, (_, i) => i / 50);
  const level = {
    data: new Float32Array([1, Number.NaN, -0]),
    shape: [1, 3] as const,
    stride: [3, 1] as const,
  };
  const record = {
    solver: 'fake',
    outcome,
    frames: { time, level },
    series: { time: time.slice() },
    health: { steps },
  };
  return record as unknown as PourRecord;
}

/**
 * A pour of so many steps of a millisecond each, unless stopped before; `steps` of its record counts those it took.
 * Counted, not timed: a machine that stands still for a moment changes nothing.
 */
export function fakeSimulate(steps: number): Simulate {
  return function* (_plan: PourPlan): Generator<Progress, PourRecord, { stop: boolean } | undefined> {
    for (let step = 1; step <= steps; step++) {
      const until = performance.now() + 1;
      while (performance.now() < until);
      const message = yield { time: step, done: 0, inclination: 0, filledShare: 0 };
      if (message?.stop) return fakeRecord({ kind: 'stopped by the user' }, step);
    }
    return fakeRecord({ kind: 'filled and quiet' }, steps);
  };
}

/** Goes on until it is stopped. */
export const endless = fakeSimulate(Number.POSITIVE_INFINITY);

export const anyPlan = { volume: 1 } as unknown as PourPlan;
export const noReport = (): void => undefined;

/** Done at once, without a step. */
export const instant = fakeSimulate(0);
