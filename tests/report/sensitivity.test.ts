import { describe, expect, it } from 'vitest';
import { criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import type { PourPlan } from '$src/core/pour/plan';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import type { RepeatBand } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import {
  HEADLINES,
  type HeadlineSource,
  headlinesOf,
  headlineText,
  meshSpread,
  rangeText,
} from '$src/report/headline';
import { otherSurface } from '$src/report/otherSurface';
import { variationsOf } from '$src/report/sensitivity';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import { spreadsOf } from '$src/report/study/repeatSpread';
import { inventedPlan } from './inventedRecord';

const planOf = (plan: PourPlan, id: string): PourPlan => {
  const at = variationsOf(plan).find((variation) => variation.id === id)?.at;
  if (!at || 'refused' in at) throw new Error(`${id} is ${at ? 'refused' : 'not varied'}.`);
  return at.plan;
};

const limits = {
  highestStart: fromDegrees(60),
  lowestEnd: fromDegrees(-90),
  slowest: fromDegrees(1),
  quickest: fromDegrees(120),
};
const staged: PourPlan = {
  ...inventedPlan,
  computation: { ...inventedPlan.computation, meshCells: 400 },
  tilt: {
    kind: 'staged',
    start: fromDegrees(30),
    smoothing: 0,
    limits,
    stages: [
      { to: 0, time: 4 },
      { to: fromDegrees(-90), rate: fromDegrees(30) },
    ],
  },
};

describe('variations of a pour', () => {
  it('changes one input each, on the mesh it is given', () => {
    expect(planOf(staged, 'charge.mass1').volume / staged.volume).toBeCloseTo(1.05, 12);
    expect(planOf(staged, 'charge.mass-1').volume / staged.volume).toBeCloseTo(0.95, 12);
    expect(planOf(staged, 'tilt.start1').tilt.start).toBeCloseTo(fromDegrees(32), 12);
    expect(planOf(staged, 'contact90').liquid.contactAngle).toBeCloseTo(fromDegrees(90), 12);
    for (const { at } of variationsOf(staged))
      if ('plan' in at) expect(at.plan.computation.meshCells).toBe(staged.computation.meshCells);
  });

  it('quickens stages given in time as much as stages given by rate', () => {
    const whole = motionOf(staged.tilt).duration;
    expect(motionOf(planOf(staged, 'tilt.rate1').tilt).duration).toBeCloseTo(whole / 1.1, 9);
    expect(motionOf(planOf(staged, 'tilt.rate-1').tilt).duration).toBeCloseTo(whole / 0.9, 9);
  });

  it('refuses a start the machine cannot do, with the reason', () => {
    const narrow = {
      ...staged,
      tilt: { ...staged.tilt, limits: { ...limits, highestStart: fromDegrees(30) } },
    };
    const at = variationsOf(narrow).find(({ id }) => id === 'tilt.start1')!.at;
    expect('refused' in at && at.refused.by).toBe('machine');
  });

  const machineOf = (tilt: PourPlan['tilt']) => (tilt.kind === 'machine' ? tilt.machine : null);

  it('leaves out the pace of a tilt that has none, and varies the valve and the oil of a machine instead', () => {
    const machine: PourPlan = {
      ...staged,
      tilt: {
        kind: 'machine',
        start: fromDegrees(30),
        end: fromDegrees(-90),
        limits,
        machine: BENCH_MACHINE,
      },
    };
    expect(variationsOf(machine).map(({ name }) => name)).not.toContain('tilt rate');
    expect(variationsOf(machine).map(({ name }) => name)).toContain('charge');
    expect(planOf(machine, 'tilt.start1').tilt.start).toBeCloseTo(fromDegrees(32), 12);
    const { valve, oil } = BENCH_MACHINE;
    if (valve.by === 'Kv') throw new Error('The bench machine is set by turns.');
    const wider = machineOf(planOf(machine, 'tilt.valve1').tilt);
    expect(wider?.valve).toEqual({ ...valve, open: valve.open * 1.1 });
    expect(machineOf(planOf(machine, 'tilt.oil-1').tilt)?.oil).toEqual({
      ...oil,
      temperature: oil.temperature - 10,
    });
    expect(variationsOf(staged).map(({ name }) => name)).not.toContain('oil temperature');
  });

  const measured = (band?: RepeatBand): PourPlan => ({
    ...staged,
    tilt: {
      kind: 'measured',
      start: fromDegrees(30),
      limits,
      origin: '',
      knots: [
        { time: 2, inclination: 0 },
        { time: 6, inclination: fromDegrees(-90) },
      ],
      ...(band ? { band } : {}),
    },
  });

  it('varies a measured tilt by our steps while it was measured once', () => {
    expect(motionOf(planOf(measured(), 'tilt.rate1').tilt).duration).toBeCloseTo(6 / 1.1, 9);
    expect(planOf(measured(), 'tilt.start-1').tilt.start).toBeCloseTo(fromDegrees(28), 12);
  });

  it('varies it by two standard deviations of its repeats when there are several, and tells their count', () => {
    const band = { count: 5, start: fromDegrees(0.4), time: 0.1, rate: fromDegrees(0.5) };
    const plan = measured(band);
    const { tilt } = planOf(plan, 'tilt.rate1');
    expect(motionOf(tilt).duration).toBeCloseTo(120 / (120 / 6 + 1), 9);
    expect(planOf(plan, 'tilt.start1').tilt.start).toBeCloseTo(fromDegrees(30.8), 12);
    const told = variationsOf(plan).filter(({ id }) => id.startsWith('tilt.'));
    expect(told.every(({ change }) => change.includes('5 repeats'))).toBe(true);
    expect(spreadsOf({ ...POUR_WINDOW, repeatability: [] }, plan)).toEqual(
      POUR_WINDOW.axes.map(({ setting }) =>
        setting === 'tilt.start' ? 2 * band.start : setting === 'tilt.time' ? 2 * band.time : 0,
      ),
    );
    expect(spreadsOf({ ...POUR_WINDOW, repeatability: [0.3, 0.4] }, plan)).toEqual([0.3, 0.4]);
  });
});

describe('variations of a pour with heat', () => {
  const hot: PourPlan = { ...staged, heat: heatPlanOf(metalNamed('A356')!, staged.section)! };
  const of = (plan: PourPlan) => variationsOf(plan).filter(({ id }) => id.startsWith('heat.'));

  it('move metal, die and coat both ways, each by itself', () => {
    const { startTemperature, regions } = hot.heat!;
    expect(planOf(hot, 'heat.metal-1').heat!.startTemperature).toBeCloseTo(startTemperature - 10, 9);
    expect(planOf(hot, 'heat.metal-1').heat!.regions).toEqual(regions);
    const die = planOf(hot, 'heat.die1').heat!;
    expect(die.regions.map(({ dieTemperature }) => dieTemperature)).toEqual(
      regions.map(({ dieTemperature }) => dieTemperature + 25),
    );
    expect(die.startTemperature).toBe(startTemperature);
    const coat = planOf(hot, 'heat.transfer1').heat!.regions;
    coat.forEach(({ transfer }, k) => {
      expect(transfer / regions[k]!.transfer).toBeCloseTo(1.2, 9);
    });
    expect(of(hot).map(({ change }) => change)).toEqual([
      '−10 °C',
      '+10 °C',
      '−25 °C',
      '+25 °C',
      '−20 %',
      '+20 %',
    ]);
    expect(of(staged)).toEqual([]);
  });

  it('stop the front sooner and later than is assumed, in alloys that run longest only sooner', () => {
    const stops = (plan: PourPlan) => variationsOf(plan).filter(({ name }) => name === 'a front stops');
    const longest = { ...staged, heat: heatPlanOf(metalNamed('AlSi12')!, staged.section)! };
    expect(hot.heat!.freezing.coherency).toBe(0.25);
    expect(stops(hot).map(({ change }) => change)).toEqual(['20 % solid', '35 % solid']);
    expect(stops(longest).map(({ change }) => change)).toEqual(['35 % solid']);
    expect(stops(staged)).toEqual([]);
    const { freezing, ...rest } = planOf(hot, 'stops0.2').heat!;
    expect(freezing).toEqual({ ...hot.heat!.freezing, coherency: 0.2 });
    expect({ ...rest, freezing: hot.heat!.freezing }).toEqual(hot.heat);
  });

  it('are told in the degrees of the book', () => {
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    const told = variationsOf(hot, units).filter(({ id }) => id.startsWith('heat.'));
    expect(told.map(({ change }) => change).slice(0, 4)).toEqual(['−18 °F', '+18 °F', '−45 °F', '+45 °F']);
    expect(variationsOf(hot, units).at(-1)!.change).toBe('clean, 1140 dyn/cm');
  });
});

describe('the other surface', () => {
  const oxidised = {
    density: 2400,
    viscosity: 1.1e-3,
    surfaceTension: 0.865,
    contactAngle: 2.6,
    criticalSpeed: criticalSpeedOf(0.865, 2400),
  };

  it('is clean aluminium at 1.10 N/m, with its own critical speed (Garcia-Cordovilla et al. 1986)', () => {
    const { name, liquid } = otherSurface(oxidised);
    expect(name).toBe('clean');
    expect(liquid.surfaceTension).toBeCloseTo(1.1, 12);
    expect(liquid.criticalSpeed).toBeCloseTo(criticalSpeedOf(1.1, 2400), 12);
  });

  it('leads back again', () => {
    const back = otherSurface(otherSurface(oxidised).liquid);
    expect(back.name).toBe('oxidised');
    expect(back.liquid.surfaceTension).toBeCloseTo(0.865, 12);
  });

  it('leaves a typed critical speed alone', () => {
    expect(otherSurface({ ...oxidised, criticalSpeed: 0.4 }).liquid.criticalSpeed).toBe(0.4);
  });
});

describe('spread between meshes', () => {
  const full: HeadlineSource = {
    peakFrontSpeed: 0.5,
    firstFlow: 0.2,
    shareAtStart: 0,
    fillTime: 2,
    shareAboveCritical: 0,
    foldScore: 1,
    lap: null,
  };

  it('says nothing of 4 %, and tells 6 %', () => {
    expect(meshSpread({ ...full, peakFrontSpeed: 0.52 }, full)).toEqual([]);
    const told = meshSpread({ ...full, peakFrontSpeed: 0.53 }, full);
    expect(told).toMatchObject([{ label: 'front speed, peak', coarse: '0.53 m/s', full: '0.50 m/s' }]);
    expect(told[0]!.share).toBeCloseTo(0.06, 12);
  });

  it('says of metal that stood in the die before the tilt that it did, not that it never came', () => {
    const none = { ...full, peakFrontSpeed: null, firstFlow: null, shareAboveCritical: null };
    const words = (figures: HeadlineSource) => HEADLINES.slice(0, 4).map((one) => headlineText(one, figures));
    expect(words({ ...none, shareAtStart: 0.06 })).toEqual([
      'in the die while ladling',
      'before the tilt',
      '2.00 s',
      'not measured',
    ]);
    expect(words({ ...none, fillTime: null })).toEqual([
      'never in the die',
      'no angle',
      'not filled',
      'no front',
    ]);
  });

  it('has a figure for what is left before freezing where heat was computed, and speeds in the units of the book', () => {
    const heated = { ...full, lap: { margin: 1.25 } };
    expect(headlinesOf(full).map(({ key }) => key)).not.toContain('lapMargin');
    const margin = headlinesOf(heated).at(-1)!;
    expect(headlineText(margin, heated)).toBe('1.25 s');
    expect(headlineText(margin, { ...full, lap: { margin: null } })).toBe('nowhere near');
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    // 0.5 m/s is 19.685 in/s.
    expect(headlineText(HEADLINES[0]!, full, units)).toBe('19.7 in/s');
    expect(rangeText(HEADLINES[0]!, [0.5, 0.52], units)).toBe('19.7 in/s to 20.5 in/s');
  });

  it('tells a figure that only one of the two runs has', () => {
    expect(meshSpread({ ...full, fillTime: null }, full)).toMatchObject([
      { coarse: 'not filled', share: null },
    ]);
  });
});
