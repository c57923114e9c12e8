import { describe, expect, it } from 'vitest';
import { asStages, greatestStray } from '$src/core/tilt/asStages';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { KnotTilt, MachineTilt } from '$src/core/tilt/tilt';
import { fromDegrees, toDegrees } from '$src/core/units';

const tilt = (rows: readonly (readonly [time: number, degrees: number])[]): KnotTilt => ({
  kind: 'drawn',
  start: fromDegrees(30),
  limits: WIDEST_LIMITS,
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
      limits: WIDEST_LIMITS,
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
    const quick = { ...threePaces, limits: { ...WIDEST_LIMITS, quickest: fromDegrees(41) } };
    expect(strays(quick)).toBeLessThan(2);
    // Coming up from rest and going back to it takes half a smoothing of 0.2 s at either end.
    expect(motionOf(asStages(quick)).duration).toBeLessThan(motionOf(quick).duration + 0.2);
  });

  it('comes in tenths of a degree and of a second, whatever tilt it tells, and its stray is the one of what is handed over', () => {
    const odd = tilt(
      Array.from({ length: 31 }, (_, i) => [0.173 * (i + 1), 30 - 0.117 * (i + 1) ** 2] as const),
    );
    for (const told of [odd, threePaces]) {
      for (const stage of asStages(told).stages) {
        const time = 'time' in stage ? stage.time : Number.NaN;
        expect(time * 10).toBeCloseTo(Math.round(time * 10), 9);
        expect(toDegrees(stage.to) * 10).toBeCloseTo(Math.round(toDegrees(stage.to) * 10), 9);
      }
    }
    expect(strays(odd)).toBeGreaterThan(0);
    expect(toDegrees(greatestStray(odd, asStages(odd)))).toBeCloseTo(strays(odd), 1);
    expect(checkTilt(asStages(odd)).issues).toEqual([]);
  });

  it('goes no lower than the machine, though the nearest tenth of a degree lies there', () => {
    const limits = { ...WIDEST_LIMITS, lowestEnd: fromDegrees(-57.06) };
    const low = { ...tilt([[6, -57.06]]), limits };
    expect(asStages(low).stages.at(-1)!.to).toBe(limits.lowestEnd);
    expect(toDegrees(asStages({ ...low, limits: WIDEST_LIMITS }).stages.at(-1)!.to)).toBeCloseTo(-57.1, 9);
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
