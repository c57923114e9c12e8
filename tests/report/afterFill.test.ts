import { describe, expect, it } from 'vitest';
import { freezePart } from '$src/core/heat/afterFill';
import { restingParts } from '$src/core/heat/restingParts';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { afterFill } from '$src/report/afterFill';
import { feedingOf } from '$src/report/feederShortage';
import { toldApart } from '$src/report/toldApart';
import { inventedFigures, inventedPlan, inventedRecord } from './inventedRecord';

const heat = heatPlanOf(metalNamed('A356')!, inventedPlan.section)!;
const hot = inventedRecord({ plan: { ...inventedPlan, heat } });

describe('parts that stand still after the fill', () => {
  it('have the moduli and volumes that geometry gives', () => {
    const { die, feeder } = restingParts(inventedPlan.section, heat, inventedPlan.volume, false);
    // Two cavities of 200 x 30 x 30 mm; a slice away from the end is cooled on four sides: 30/4 mm; the end wall takes off.
    expect(die.map(({ name }) => name)).toEqual(['arm']);
    expect(die[0]!.volume).toBeCloseTo(2 * 0.2 * 0.03 * 0.03, 12);
    expect(die[0]!.modulus).toBeCloseTo(0.0075, 6);
    // Charge 414 cm³ less 360 cm³ of die.
    expect(feeder!.volume).toBeCloseTo(54e-6, 12);
  });

  it('cool the less metal is left over the mouth, the quicker: the step to the die cools all of it', () => {
    const [first, second, ...rest] = inventedPlan.section.roof;
    const step = [
      { x: 0.103, y: 0.05 },
      { x: 0.155, y: 0.05 },
      { x: 0.155, y: 0.03 },
    ];
    const section = { ...inventedPlan.section, roof: [first!, second!, ...step, rest.at(-1)!] };
    const die = 2 * 0.2 * 0.03 * 0.03;
    const [little, more] = [4e-6, 54e-6].map(
      (left) => restingParts(section, heat, die + left, false).feeder!,
    );
    // By hand: a slab of 50 x 60 mm on a step of 20 x 60 mm, cooled there, on floor, roof and both sides.
    const byHand = (left: number) => {
      const height = left / (0.05 * 0.06);
      return left / (0.02 * 0.06 + height * 2 * (0.05 + 0.06));
    };
    expect(little!.modulus / byHand(4e-6)).toBeCloseTo(1, 2);
    expect(more!.modulus / byHand(54e-6)).toBeCloseTo(1, 2);
    expect(little!.modulus).toBeLessThan(0.3 * more!.modulus);
  });

  it('freeze later once a gap opens', () => {
    const [touching, gapped] = [false, true].map(
      (gap) =>
        freezePart(
          heat.freezing,
          restingParts(inventedPlan.section, heat, inventedPlan.volume, gap).die[0]!,
          150,
        ).time,
    );
    expect(gapped!).toBeGreaterThan(touching! * 1.5);
  });
});

describe('the dwell of skin-forming metals', () => {
  const gappedOver = (base: string): number => {
    const plan = heatPlanOf(metalNamed(base)!, inventedPlan.section)!;
    const [touching, gapped] = [false, true].map((gap) =>
      freezePart(
        plan.freezing,
        restingParts(inventedPlan.section, plan, inventedPlan.volume, gap).die[0]!,
        150,
      ),
    );
    return gapped!.time / touching!.time;
  };

  /** Common practice, no source: a skin holds a casting early, so its gap opens no later than a mushy metal's. */
  it.each(['AlSi12', 'aluminium bronze', 'brass'])(
    'of %s is lengthened by its gap as that of A356 is',
    (base) => {
      expect(gappedOver('A356')).toBeGreaterThan(2.5);
      // The more superheat goes before the gap, the less it counts; at 0.9 solid it made a quarter at most.
      expect(gappedOver(base)).toBeGreaterThan(2.5);
    },
  );

  it('says so where the metal itself holds heat back, as bronze under a thin coat does', () => {
    const noteOf = (base: string): string => {
      const plan = { ...inventedPlan, heat: heatPlanOf(metalNamed(base)!, inventedPlan.section)! };
      return afterFill(inventedRecord({ plan }), null)!.figures[0]!.note;
    };
    expect(noteOf('A356')).toBe('arm, all solid');
    expect(noteOf('aluminium bronze')).toMatch(/^arm, all solid; the first time is rather longer/);
  });

  it('is longer of AlSi12 than of A356 under the same coat, for it holds more latent heat', () => {
    const earliest = (base: string): number => {
      const plan = { ...inventedPlan, heat: heatPlanOf(metalNamed(base)!, inventedPlan.section)! };
      return afterFill(inventedRecord({ plan }), null)!.ejection.earliest;
    };
    expect(earliest('AlSi12')).toBeGreaterThan(earliest('A356'));
  });
});

describe('after the fill', () => {
  it('says nothing without heat or when the die is not full', () => {
    expect(afterFill(inventedRecord(), null)).toBeNull();
    const figures = { ...inventedFigures, filledTime: null };
    expect(afterFill({ ...hot, figures }, null)).toBeNull();
  });

  it('never opens sooner than the proven dwell, nor than all is solid', () => {
    const solid = afterFill(hot, null)!.ejection;
    expect(solid.earliest).toBe(solid.solid);
    expect(afterFill(hot, solid.solid / 2)!.ejection.earliest).toBe(solid.solid);
    const proven = afterFill(hot, solid.solid * 2)!.ejection;
    expect(proven.earliest).toBe(solid.solid * 2);
    expect(proven.because).toBe('the dwell you have proven');
  });

  it('tells metal that is given and asked for so finely that one sees which is more', () => {
    expect(toldApart(10.9e-6, 11.3e-6)).toEqual(['10.9', '11.3']);
    expect(toldApart(10.4e-6, 32e-6)).toEqual(['10', '32']);
  });

  it('counts what the feeder itself draws apart, for it grows with the charge and that of the die does not', () => {
    const drawn = (volume: number) => {
      const { demand, ownDemand } = feedingOf(inventedPlan.section, heat, volume, 0.05)!;
      return { own: ownDemand, die: demand - ownDemand };
    };
    const [little, more] = [drawn(inventedPlan.volume), drawn(1.05 * inventedPlan.volume)];
    expect(more.die).toBeCloseTo(little.die, 12);
    expect(more.own).toBeGreaterThan(1.2 * little.own);
    expect(afterFill(hot, null)!.figures[1]!.note).toMatch(/die and feeder draw .* of it the feeder itself$/);
  });

  it('knows the feeder from a region of the die that is called so', () => {
    const { section } = inventedPlan;
    const regions = section.regions.map((region) => ({ ...region, name: 'feeder' }));
    const named = inventedRecord({ plan: { ...hot.plan, section: { ...section, regions } } });
    const values = (record: typeof hot) => afterFill(record, null)!.figures.map(({ value }) => value);
    expect(values(named)).toEqual(values(hot));
    expect(afterFill(named, null)!.figures[0]!.note).toMatch(/^feeder, all solid/);
  });

  it('marks common practice as such', () => {
    const closed = afterFill(hot, null)!.figures.at(-1)!;
    expect(closed.note).toContain('usual 60 to 120 s (common practice, no source)');
  });
});
