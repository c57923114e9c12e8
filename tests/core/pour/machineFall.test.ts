import { describe, expect, it } from 'vitest';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { dryRun } from '$src/core/tilt/machine/dryRun';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { machineWarnings } from '$src/core/tilt/machine/machineWarnings';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { MachineTilt } from '$src/core/tilt/tilt';
import { fromBar, fromDegrees, fromMillimetres, toDegrees } from '$src/core/units';
import { verdict } from '$src/report/verdict';
import { armPour, end, start } from './armPour';

const plan = armPour(60);
const tiltOf = (machine: Machine, quickest = WIDEST_LIMITS.quickest): MachineTilt => ({
  kind: 'machine',
  start,
  end,
  limits: { ...WIDEST_LIMITS, quickest },
  machine,
});
function poured(tilt: MachineTilt): PourRecord {
  const run = runPour({ ...plan, tilt });
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}
const warned = (record: PourRecord): string[] => record.machine!.warnings.map(({ kind }) => kind);
const warnedDry = (tilt: MachineTilt): string[] =>
  machineWarnings(tilt, dryRun(tilt).turned, tilt.limits.quickest).map(({ kind }) => kind);

/** A counterweight and a tight bearing that leave hardly anything to start with. */
const hardlyTurning: Machine = {
  ...BENCH_MACHINE,
  weights: [{ mass: 14, radius: 0.3, angle: fromDegrees(200) }],
  bearing: { radius: 0.02, friction: 0.3 },
};

describe('a machine with its metal in it', () => {
  const bench = poured(tiltOf(BENCH_MACHINE));

  it('is followed to its stop: what is told is what the series of the pour show', () => {
    const { time, inclination } = bench.series;
    const { duration, fastest, struckAt, reached } = bench.machine!;
    const met = time[inclination.findIndex((one) => one <= end + 1e-9)]!;
    expect(Math.abs(duration - met)).toBeLessThan(0.011);
    const rates = Array.from(
      time.slice(1),
      (one, i) => (inclination[i]! - inclination[i + 1]!) / (one - time[i]!),
    );
    expect(Math.abs(fastest / Math.max(...rates) - 1)).toBeLessThan(0.02);
    expect(reached).toBe(end);
    expect(toDegrees(struckAt!)).toBeGreaterThan(0);
    expect(warned(bench)).toEqual([]);
    expect(
      verdict(bench)
        .reasons.map(({ name }) => name)
        .join(),
    ).not.toContain('machine');
  });

  it('of a tilt that is given there is nothing to tell', () => {
    const run = runPour(plan);
    let step = run.next();
    while (!step.done) step = run.next();
    expect(step.value.machine).toBeUndefined();
  });

  it('does not start under metal behind its pivot, though empty it would, and the run does not wait for it', () => {
    const tilt = tiltOf(hardlyTurning);
    expect(warnedDry(tilt)).not.toContain('will not start');
    const record = poured(tilt);
    expect(warned(record)).toEqual(['will not start']);
    expect(record.machine!.warnings[0]!.message).toContain('with the metal in it');
    expect(record.series.time.at(-1)!).toBeLessThan(5);
    expect(record.figures.firstFlow.kind).toBe('never');
    expect(verdict(record).reasons[0]).toMatchObject({ name: 'machine: will not start' });
  });

  it('presses harder than empty, and the warning is of that', () => {
    const dry = dryRun(tiltOf(BENCH_MACHINE)).turned.highestPressure;
    const loaded = bench.machine!.highestPressure;
    expect(loaded).toBeGreaterThan(dry * 1.002);
    const tilt = tiltOf({ ...BENCH_MACHINE, highestPressure: (dry + loaded) / 2 });
    expect(warnedDry(tilt)).toEqual([]);
    expect(warned(poured(tilt))).toEqual(['pressure too high']);
  });

  it('runs quicker than empty, and away when that is more than it may', () => {
    const dry = dryRun(tiltOf(BENCH_MACHINE)).turned.fastest;
    const tilt = tiltOf(BENCH_MACHINE, (dry + bench.machine!.fastest) / 2);
    expect(warnedDry(tilt)).toEqual([]);
    const record = poured(tilt);
    expect(warned(record)).toEqual(['runs away']);
    expect(record.machine!.warnings[0]!.message).toContain('a second');
  });

  it('cavitates on the pulled side', () => {
    const line = { diameter: fromMillimetres(1.5), length: 3 };
    const record = poured(tiltOf({ ...BENCH_MACHINE, line, reservoir: 1e-3 }));
    expect(warned(record)).toContain('cavitates');
    expect(record.machine!.deepestSuction).toBeGreaterThan(fromBar(0.7));
  });

  it('strikes the stop without a cushion', () => {
    const record = poured(tiltOf({ ...BENCH_MACHINE, cushion: { over: 0, damping: 0 } }));
    expect(warned(record)).toContain('strikes the stop');
  });

  it('stalls with metal in where the bearing takes all', () => {
    const record = poured(tiltOf({ ...BENCH_MACHINE, bearing: { radius: 0.04, friction: 1 } }));
    expect(warned(record)).toContain('hangs');
    expect(record.machine!.struckAt).toBeNull();
    expect(record.machine!.reached).toBeGreaterThan(end + fromDegrees(1));
    expect(record.series.time.at(-1)!).toBeLessThan(40);
  });

  it('stopped by hand it is not said to hang', () => {
    const run = runPour({ ...plan, tilt: tiltOf(BENCH_MACHINE) });
    let step = run.next();
    while (!step.done) step = run.next({ stop: true });
    expect(warned(step.value)).toEqual([]);
  });
});
