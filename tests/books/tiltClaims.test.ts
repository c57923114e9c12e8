import { describe, expect, it } from 'vitest';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { asStages, greatestStray } from '$src/core/tilt/asStages';
import { dryRun } from '$src/core/tilt/machine/dryRun';
import { motionOf } from '$src/core/tilt/motionOf';
import { fromCelsius, fromDegrees, toDegrees } from '$src/core/units';
import { computed } from './computed';
import { planOf } from './planOf';
import { betterTilt } from './sources/betterTilt';
import { settingDamper } from './sources/settingDamper';

/** What the notes of the two books on tilts claim, on the coarse mesh and on the mesh of the books. */

describe.each([PREVIEW_MESH_CELLS, 400])('from a measured tilt to a better one, %d mesh cells', (cells) => {
  const measured = computed(planOf(betterTilt, 'pour-measured', cells));
  const led = computed(planOf(betterTilt, 'pour-front-led', cells));
  const critical = measured.plan.liquid.criticalSpeed;

  it('the measured tilt runs the front over critical', () =>
    expect(measured.figures.peakFrontSpeed!).toBeGreaterThan(critical));

  it('the front-led one stays under 60 % of critical, and its correction lowers the peak', () => {
    const { tries, chosen } = led.frontLed!;
    expect(led.figures.peakFrontSpeed!).toBeLessThan(0.6 * critical);
    expect(chosen).toBeGreaterThan(0);
    expect(tries[chosen]!.peakFrontSpeed!).toBeLessThan(tries[0]!.peakFrontSpeed!);
  });

  it('folds less, and fills the arm', () => {
    expect(led.folds.length).toBeLessThan(measured.folds.length);
    expect(led.figures.foldScore).toBeLessThan(measured.figures.foldScore);
    expect(led.outcome.kind).toBe('filled and quiet');
  });

  it('told in stages it strays by half a degree, and its front peaks as the curve has it', () => {
    const { tilt } = led.frontLed!.tries[led.frontLed!.chosen]!;
    const stages = asStages(tilt);
    expect(stages.stages.length).toBeLessThanOrEqual(6);
    expect(toDegrees(greatestStray(tilt, stages))).toBeLessThan(0.75);
    const told = computed({ ...planOf(betterTilt, 'pour-front-led', cells), tilt: stages });
    // The coarse mesh reads the front in few cells, and its peak jumps by more.
    const near = cells === PREVIEW_MESH_CELLS ? 0.3 : 0.1;
    expect(Math.abs(told.figures.peakFrontSpeed! / led.figures.peakFrontSpeed! - 1)).toBeLessThan(near);
    expect(told.outcome.kind).toBe('filled and quiet');
  });

  it('turns no quicker than 20° a second', () => {
    const motion = motionOf(led.frontLed!.tries[led.frontLed!.chosen]!.tilt);
    for (let t = 0; t < motion.duration; t += 0.02)
      expect(Math.abs(motion.rateAt(t))).toBeLessThanOrEqual(fromDegrees(20));
  });
});

it('the measured tilt of the book has the band of three repeats', () => {
  const { tilt } = planOf(betterTilt, 'pour-measured', 100);
  if (tilt.kind !== 'measured') throw new Error(`The tilt is ${tilt.kind}.`);
  expect(tilt.band!.count).toBe(3);
  expect(tilt.band!.time).toBeGreaterThan(0.05);
  expect(tilt.band!.time).toBeLessThan(0.3);
});

describe('setting the damper', () => {
  const [open, shut] = (['pour-open', 'pour-shut'] as const).map((id) => planOf(settingDamper, id, 100));
  const machineOf = ({ tilt }: PourPlan) => {
    if (tilt.kind !== 'machine') throw new Error(`The tilt is ${tilt.kind}.`);
    return tilt;
  };

  it('differs in nothing but the valve', () => {
    const [a, b] = [machineOf(open!), machineOf(shut!)];
    if (a.machine.valve.by !== 'turns' || b.machine.valve.by !== 'turns')
      throw new Error('Not set by turns.');
    expect([a.machine.valve.open, b.machine.valve.open]).toEqual([1.5, 0.5]);
    expect({ ...a.machine, valve: { ...a.machine.valve, open: 0.5 } }).toEqual(b.machine);
    expect({ ...open!, tilt: null }).toEqual({ ...shut!, tilt: null });
  });

  it('the rate is not even over the stroke', () => {
    const { motion } = dryRun(machineOf(shut!));
    const rates = [0.25, 0.5, 0.75].map((share) => Math.abs(motion.rateAt(share * motion.duration)));
    expect(Math.max(...rates)).toBeGreaterThan(1.15 * Math.min(...rates));
  });

  it('half a turn is much slower, and at 5 °C slower again by half at least', () => {
    const tilt = machineOf(shut!);
    const oil = { ...tilt.machine.oil, temperature: fromCelsius(5) };
    const time = (of: typeof tilt) => dryRun(of).motion.duration;
    expect(time(tilt)).toBeGreaterThan(2 * time(machineOf(open!)));
    expect(time({ ...tilt, machine: { ...tilt.machine, oil } })).toBeGreaterThan(1.5 * time(tilt));
  });

  it('the more open valve runs the front faster', () => {
    const peaks = [open!, shut!].map((plan) => computed(plan).figures.peakFrontSpeed!);
    expect(peaks[0]).toBeGreaterThan(peaks[1]!);
  });
});
