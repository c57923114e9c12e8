import { describe, expect, it } from 'vitest';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { asStages, greatestStray } from '$src/core/tilt/asStages';
import { dryRun } from '$src/core/tilt/machine/dryRun';
import { motionOf } from '$src/core/tilt/motionOf';
import { fromCelsius, fromDegrees, toDegrees } from '$src/core/units';
import { pointResult } from '$src/report/study/pointFigures';
import { type Region, regionOf } from '$src/report/study/region';
import { resultWords } from '$src/report/study/regionWords';
import { computed } from './computed';
import { planOf } from './planOf';
import { betterTilt } from './sources/betterTilt';
import { settingDamper } from './sources/settingDamper';

function resultOf(record: PourRecord): { readonly region: Region; readonly words: string } {
  const result = pointResult(record);
  return { region: regionOf(result), words: resultWords(result) };
}

/** What the notes of the two books on tilts claim, on coarse meshes and on the mesh of the books. */

describe.each([PREVIEW_MESH_CELLS, 200, 400])(
  'from a measured tilt to a better one, %d mesh cells',
  (cells) => {
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

    it('is sound, and its feeder has enough', () => {
      const { region, words } = resultOf(led);
      expect(region).toBe('sound');
      expect(words).not.toContain('short');
    });

    it('reaches the 40 % of critical that are asked for', () =>
      expect(Math.abs(led.figures.peakFrontSpeed! / (0.4 * critical) - 1)).toBeLessThan(0.05));

    it('told in stages it strays by less than a degree, and its front stays under half of critical', () => {
      const { tilt } = led.frontLed!.tries[led.frontLed!.chosen]!;
      const stages = asStages(tilt);
      expect(stages.stages.length).toBeLessThanOrEqual(6);
      expect(toDegrees(greatestStray(tilt, stages))).toBeLessThan(1);
      const told = computed({ ...planOf(betterTilt, 'pour-front-led', cells), tilt: stages });
      expect(told.figures.peakFrontSpeed!).toBeLessThan(0.5 * critical);
      expect(told.outcome.kind).toBe('filled and quiet');
    });

    it('turns no quicker than 20° a second', () => {
      const motion = motionOf(led.frontLed!.tries[led.frontLed!.chosen]!.tilt);
      for (let t = 0; t < motion.duration; t += 0.02)
        expect(Math.abs(motion.rateAt(t))).toBeLessThanOrEqual(fromDegrees(20));
    });
  },
);

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

  const openBy = ({ tilt, ...rest }: PourPlan, open: number): PourPlan => {
    const { machine, ...falling } = machineOf({ tilt, ...rest });
    if (machine.valve.by !== 'turns') throw new Error('Not set by turns.');
    return { ...rest, tilt: { ...falling, machine: { ...machine, valve: { ...machine.valve, open } } } };
  };

  const onAColdMorning = ({ tilt, ...rest }: PourPlan): PourPlan => {
    const { machine, ...falling } = machineOf({ tilt, ...rest });
    const oil = { ...machine.oil, temperature: fromCelsius(5) };
    return { ...rest, tilt: { ...falling, machine: { ...machine, oil } } };
  };

  it('half a turn is much slower, and at 5 °C slower again by half at least', () => {
    const time = (of: PourPlan) => dryRun(machineOf(of)).motion.duration;
    expect(time(shut!)).toBeGreaterThan(2 * time(open!));
    expect(time(onAColdMorning(shut!))).toBeGreaterThan(1.5 * time(shut!));
  });

  it('half a turn folds no film, and the feeder is not short', () => {
    const { words, region } = resultOf(computed(shut!));
    expect(words).not.toContain('short');
    expect(region).toBe('near the limit');
  });

  it('three tenths of a turn are sound on the mesh of the book; at 5 °C the metal goes stiff before the arm is full', () => {
    const further = openBy(planOf(settingDamper, 'pour-shut', 400), 0.3);
    expect(resultOf(computed(further)).region).toBe('sound');
    expect(resultOf(computed(onAColdMorning(further))).region).toBe('misrun');
  });

  it('the more open valve folds film', () => expect(resultOf(computed(open!)).words).toContain('folds film'));

  it('the more open valve runs the front faster', () => {
    const peaks = [open!, shut!].map((plan) => computed(plan).figures.peakFrontSpeed!);
    expect(peaks[0]).toBeGreaterThan(peaks[1]!);
  });
});
