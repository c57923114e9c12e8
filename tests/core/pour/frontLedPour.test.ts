import { describe, expect, it } from 'vitest';
import { volumeFromHead } from '$src/core/level/head';
import { levelPath } from '$src/core/level/levelPath';
import { criticalSpeed } from '$src/core/metal/criticalSpeed';
import { metalNamed } from '$src/core/metal/metals';
import { frontLedPour } from '$src/core/pour/frontLedPour';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { type FrontLedPlan, ledByLevel } from '$src/core/pour/ledByLevel';
import { planHash } from '$src/core/pour/planHash';
import { runFront, runPour } from '$src/core/pour/runPour';
import { simulate } from '$src/core/pour/simulate';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { FRONT_LED_ACCELERATION, FRONT_LED_SHARE, frontLedTilt } from '$src/core/tilt/frontLed';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { armBehind } from '../../books/sources/shop';
import { armPour, end, section, start } from './armPour';

const plan = armPour(100);
const critical = criticalSpeed(metalNamed('A356')!);
const wish = {
  speed: FRONT_LED_SHARE * critical,
  acceleration: FRONT_LED_ACCELERATION,
  limits: WIDEST_LIMITS,
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
      if (rate < 1.5 * WIDEST_LIMITS.slowest) continue;
      expect((frontAt(t + window) - frontAt(t)) / window).toBeLessThan(1.6 * wish.speed);
    }
  });

  const ledPlan = (share: number, homeWithin: number | null = null, quickest = 30): FrontLedPlan => ({
    ...plan,
    tilt: {
      kind: 'front-led',
      start,
      end,
      share,
      homeWithin,
      limits: { ...WIDEST_LIMITS, quickest: fromDegrees(quickest) },
    },
  });

  /** A pour that asks for 40 % of critical, with the tilt found for it. */
  const wanted = ledPlan(0.4);
  const led = finish(simulate(wanted));

  it('corrected in the solver, it peaks below the uncorrected one, and far below a quick swing', () => {
    const { tries, chosen } = led.frontLed!;
    const quick = finish(runPour(plan));
    expect(tries.length).toBeGreaterThan(1);
    expect(tries.length).toBeLessThanOrEqual(5);
    expect(led.figures.peakFrontSpeed).toBe(tries[chosen]!.peakFrontSpeed);
    expect(tries[chosen]!.peakFrontSpeed!).toBeLessThan(0.9 * tries[0]!.peakFrontSpeed!);
    expect(tries[chosen]!.peakFrontSpeed!).toBeLessThan(0.55 * critical);
    expect(tries[chosen]!.peakFrontSpeed!).toBeLessThan(quick.figures.peakFrontSpeed! / 2);
    for (const { tilt } of tries) expect(checkTilt(tilt).issues).toEqual([]);
  });

  it('never turns quicker than the machine', () => {
    const { tries } = finish(frontLedPour(ledPlan(0.6, null, 20)));
    for (const { tilt } of tries) {
      const motion = motionOf(tilt);
      for (let t = 0; t < motion.duration; t += 0.02)
        expect(Math.abs(motion.rateAt(t))).toBeLessThanOrEqual(fromDegrees(20));
    }
  });

  it('peaks lower behind a fuller basin and behind a shorter one, as its words advise', () => {
    const peakOf = (length: number, head: number) => {
      const behind = armBehind({ length, pit: 0, open: 50 });
      const volume = volumeFromHead(behind, start, end, fromMillimetres(head))!;
      const asked = { ...ledPlan(0.4), section: behind, volume };
      return finish(runPour({ ...asked, tilt: ledByLevel(asked) })).figures.peakFrontSpeed!;
    };
    const usual = peakOf(160, 14);
    expect(peakOf(160, 50)).toBeLessThan(0.85 * usual);
    expect(peakOf(115, 14)).toBeLessThan(0.9 * usual);
  });

  it('is not hurried when no time was given, though it laps', () => {
    const metal = metalNamed('A356')!;
    const cold = heatPlanOf(metal, section)!;
    const asked: FrontLedPlan = {
      ...ledPlan(0.15),
      heat: { ...cold, startTemperature: cold.startTemperature - 40 },
    };
    const { tries, chosen } = finish(frontLedPour(asked));
    expect(tries[chosen]!.lap).not.toBe('none');
    for (const { wished } of tries) expect(wished).toBe(0.15 * critical);
    const hurried = finish(frontLedPour({ ...asked, tilt: { ...asked.tilt, homeWithin: 60 } }));
    expect(hurried.tries.at(-1)!.wished).toBeGreaterThan(0.15 * critical);
  });

  it('is hurried when the front comes home too late, and no more than the time asks for', () => {
    const free = finish(frontLedPour(ledPlan(0.3)));
    const slow = free.tries[free.chosen]!.homeTime!;
    const { tries, chosen } = finish(frontLedPour(ledPlan(0.3, slow / 1.8)));
    expect(tries[0]!.homeTime!).toBeGreaterThan(slow / 1.8);
    expect(tries[chosen]!.homeTime!).toBeLessThanOrEqual(slow / 1.8);
    for (const { wished } of tries) expect(wished).toBeLessThanOrEqual(critical + 1e-12);
  });

  it('a pour that asks for it keeps its own plan and says how the tilt was found', () => {
    expect(led.plan).toBe(wanted);
    expect(led.planHash).toBe(planHash(wanted));
    expect(led.series.inclination.at(-1)!).toBeCloseTo(end, 6);
  });

  it('stops when told to, with what was found so far', () => {
    const run = frontLedPour(wanted);
    let step = run.next();
    while (!step.done) step = run.next({ stop: true });
    expect(step.value.tries).toHaveLength(1);
    expect(step.value.record.outcome.kind).toBe('stopped by the user');
  });

  it('a sketch of the front takes it as the level fill has it', () => {
    const sketch = runFront(wanted);
    expect(sketch.arrivalTime).toBeGreaterThan(0);
    expect(() => finish(runPour(wanted))).toThrow(/front-led/);
    expect(sketch.arrivalTime).toBe(runFront({ ...wanted, tilt: ledByLevel(wanted) }).arrivalTime);
  });
});

describe('a machine in the run', () => {
  it('turns under its metal: its weight is small beside the body but changes the tilt', () => {
    const tilt = { kind: 'machine' as const, start, end, limits: WIDEST_LIMITS, machine: BENCH_MACHINE };
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
