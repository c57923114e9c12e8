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

/** Busy for `milliseconds` of computing, unless stopped; `steps` counts how often it was asked to go on. */
export function fakeSimulate(milliseconds: number): Simulate {
  return function* (_plan: PourPlan): Generator<Progress, PourRecord, { stop: boolean } | undefined> {
    const end = performance.now() + milliseconds;
    let steps = 0;
    while (performance.now() < end) {
      steps += 1;
      const until = performance.now() + 1;
      while (performance.now() < until);
      const message = yield { time: steps, done: 0, inclination: 0, filledShare: 0 };
      if (message?.stop) return fakeRecord({ kind: 'stopped by the user' }, steps);
    }
    return fakeRecord({ kind: 'filled and quiet' }, steps);
  };
}

export const anyPlan = { volume: 1 } as unknown as PourPlan;
export const noReport = (): void => undefined;

/** Done at once, without a step. */
export const instant = fakeSimulate(0);
