import { describe, expect, it } from 'vitest';
import { asStages } from '$src/core/tilt/asStages';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import type { KnotTilt, MachineTilt } from '$src/core/tilt/tilt';
import { fromDegrees, toDegrees } from '$src/core/units';

const tilt = (rows: readonly (readonly [time: number, degrees: number])[]): KnotTilt => ({
  kind: 'drawn',
  start: fromDegrees(30),
  limits: DEFAULT_LIMITS,
  knots: rows.map(([time, degrees]) => ({ time, inclination: fromDegrees(degrees) })),
  origin: '',
});

/** Greatest difference over the time of both [°]. */
function strays(one: KnotTilt | MachineTilt, count?: number): number {
  const [a, b] = [motionOf(one), motionOf(asStages(one, count))];
  const times = Array.from({ length: 201 }, (_, i) => (i * Math.max(a.duration, b.duration)) / 200);
  return toDegrees(Math.max(...times.map((t) => Math.abs(a.inclinationAt(t) - b.inclinationAt(t)))));
}

/** Brisk, slow, brisk: knots close enough that the cubics between them are straight. */
const threePaces = tilt(
  Array.from({ length: 72 }, (_, i) => {
    const time = (i + 1) / 12;
    const degrees = time < 1 ? 30 - 20 * time : time < 4 ? 10 - 5 * (time - 1) : -5 - 40 * (time - 4);
    return [time, degrees] as const;
  }),
);

describe('a tilt told in a few stages', () => {
  it('finds where one pace gives way to another', () => {
    const { stages } = asStages(threePaces, 3);
    const ends = stages.map(({ to }) => toDegrees(to));
    expect(Math.abs(ends[0]! - 10)).toBeLessThan(2.5);
    expect(Math.abs(ends[1]! + 5)).toBeLessThan(2.5);
    expect(ends[2]).toBeCloseTo(-85, 6);
    expect(strays(threePaces, 3)).toBeLessThan(4);
  });

  it('strays less with more stages, and every telling is one the machine can do', () => {
    const machine: MachineTilt = {
      kind: 'machine',
      start: fromDegrees(30),
      end: fromDegrees(-90),
      limits: DEFAULT_LIMITS,
      machine: BENCH_MACHINE,
    };
    expect(strays(machine, 4)).toBeLessThan(strays(machine, 1));
    for (const count of [1, 2, 3, 4, 6]) {
      expect(checkTilt(asStages(machine, count)).issues).toEqual([]);
      expect(checkTilt(asStages(threePaces, count)).issues).toEqual([]);
    }
  });

  it('takes no more stages than bring it nearer', () => {
    const even = tilt(Array.from({ length: 40 }, (_, i) => [(i + 1) / 8, 30 - (i + 1) * 3] as const));
    expect(asStages(even).stages.length).toBeLessThanOrEqual(2);
    expect(asStages(threePaces).stages.length).toBeGreaterThanOrEqual(3);
  });

  it('at the quickest rate no stage takes longer than its turn and its rest', () => {
    const quick = { ...threePaces, limits: { ...DEFAULT_LIMITS, quickest: fromDegrees(41) } };
    expect(strays(quick)).toBeLessThan(2);
    // Coming up from rest and going back to it takes half a smoothing of 0.2 s at either end.
    expect(motionOf(asStages(quick)).duration).toBeLessThan(motionOf(quick).duration + 0.2);
  });

  it('adds a pause to the stage after it', () => {
    const { stages } = asStages(
      tilt([
        [1, 10],
        [1.5, 10],
        [2.5, 10],
        [5.5, -60],
      ]),
      4,
    );
    expect(stages.every(({ to }, i) => to < (i === 0 ? fromDegrees(30) : stages[i - 1]!.to))).toBe(true);
    expect(stages.reduce((sum, stage) => sum + ('time' in stage ? stage.time : 0), 0)).toBeCloseTo(5.5, 6);
  });
});
