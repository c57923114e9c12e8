import { expect, test } from 'vitest';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Stage } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { moveEnd, moveStage } from '$src/ui/tilt/moveStage';

const tilt = (stages: readonly Stage[]) =>
  ({ kind: 'staged', start: 0.5, smoothing: 0.3, limits: WIDEST_LIMITS, stages }) as const;

test('the end of a stage given by rate lands where it is dragged to', () => {
  const moved = moveStage(
    tilt([
      { to: 0, rate: 0.25 },
      { to: -1.5, rate: 0.5 },
    ]),
    0,
    { time: 4, inclination: -0.1 },
  );
  const [first, second] = turnsOf(moved);
  expect(first!.time).toBeCloseTo(4, 12);
  expect(first!.to).toBe(-0.1);
  expect('rate' in moved.stages[0]!).toBe(true);
  expect(second!.rate).toBeCloseTo(0.5, 12);
});

test('a stage given by time stays given by time, and none becomes shorter than nothing', () => {
  const moved = moveStage(tilt([{ to: -1.5, time: 3 }]), 0, { time: -5, inclination: -1.4 });
  expect(moved.stages[0]).toEqual({ to: -1.4, time: 0.35 });
});

test('the end of a steady tilt lands where it is dragged to', () => {
  const steady = {
    kind: 'steady',
    start: 0.5,
    end: -1.5,
    rate: 0.25,
    smoothing: 0.3,
    limits: WIDEST_LIMITS,
  } as const;
  const moved = moveEnd(steady, { time: 6, inclination: -1.2 });
  expect(turnsOf(moved)[0]!.time).toBeCloseTo(6, 12);
  expect(moved.end).toBe(-1.2);
});
