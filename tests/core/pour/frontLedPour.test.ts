import { describe, expect, it } from 'vitest';
import { volumeFromHead } from '$src/core/level/head';
import { levelPath } from '$src/core/level/levelPath';
import { criticalSpeed } from '$src/core/metal/criticalSpeed';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { frontLedPour } from '$src/core/pour/frontLedPour';
import { DEFAULT_COMPUTATION, type PourPlan } from '$src/core/pour/plan';
import { runPour } from '$src/core/pour/runPour';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { FRONT_LED_ACCELERATION, FRONT_LED_SHARE, frontLedTilt } from '$src/core/tilt/frontLed';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { armBehind, steady } from '../../books/sources/shop';

const section = armBehind({ length: 115, pit: 0, open: 50 });
const start = fromDegrees(30);
const end = fromDegrees(-90);
const plan: PourPlan = {
  section,
  liquid: liquidOf(metalNamed('A356')!),
  volume: volumeFromHead(section, start, end, fromMillimetres(22))!,
  tilt: steady(30, 60),
  computation: { ...DEFAULT_COMPUTATION, meshCells: 100 },
};
const critical = criticalSpeed(metalNamed('A356')!);
const wish = {
  speed: FRONT_LED_SHARE * critical,
  acceleration: FRONT_LED_ACCELERATION,
  limits: DEFAULT_LIMITS,
};

function finish<T>(run: Generator<unknown, T, { stop: boolean } | undefined>): T {
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

describe('front-led tilt', () => {
  const path = levelPath(section, plan.volume, start, end, null);

  it('holds the level-fill front at the wished speed or below, but where the machine has no slower rate', () => {
    const motion = motionOf(frontLedTilt(path, wish));
    expect(checkTilt(frontLedTilt(path, wish)).issues).toEqual([]);
    const frontAt = (time: number) => {
      const at = motion.inclinationAt(time);
      return path.front[path.inclination.findIndex((one) => one <= at)] ?? path.front.at(-1)!;
    };
    const window = 0.25;
    for (let t = 0; t < motion.duration - window; t += 0.05) {
      const rate = Math.abs(motion.rateAt(t + window / 2));
      if (rate < 1.5 * DEFAULT_LIMITS.slowest) continue;
      expect((frontAt(t + window) - frontAt(t)) / window).toBeLessThan(1.6 * wish.speed);
    }
  });

  it('corrected in the solver, it peaks below the uncorrected one, and far below a quick swing', () => {
    const { peaks, before, after } = finish(frontLedPour(plan, wish));
    const quick = finish(runPour(plan));
    expect(peaks.length).toBeLessThanOrEqual(5);
    expect(after.figures.peakFrontSpeed!).toBeLessThan(before.figures.peakFrontSpeed!);
    expect(after.figures.peakFrontSpeed!).toBeLessThan(quick.figures.peakFrontSpeed! / 2);
  });
});

describe('a machine in the run', () => {
  it('turns under its metal: its weight is small beside the body but changes the tilt', () => {
    const tilt = { kind: 'machine' as const, start, end, limits: DEFAULT_LIMITS, machine: BENCH_MACHINE };
    const run = (density: number) => finish(runPour({ ...plan, tilt, liquid: { ...plan.liquid, density } }));
    const durationOf = (record: { series: { time: Float64Array; inclination: Float64Array } }) =>
      record.series.time[record.series.inclination.findIndex((one) => one <= end + 1e-9)]!;
    const light = run(plan.liquid.density);
    const heavy = run(plan.liquid.density * 8);
    expect(light.outcome.kind).toMatch(/quiet/);
    expect(light.health.volumeDrift).toBeLessThan(1e-12);
    const dry = motionOf(tilt).duration;
    expect(Math.abs(durationOf(light) - dry)).toBeLessThan(0.2 * dry);
    expect(durationOf(heavy)).not.toBeCloseTo(durationOf(light), 2);
  });
});
