import { describe, expect, it } from 'vitest';
import type { Metal } from '$src/core/metal/metal';
import { metalNamed } from '$src/core/metal/metals';
import type { OwnThermal } from '$src/core/metal/thermal';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { fromCelsius } from '$src/core/units';
import { afterFill } from '$src/report/afterFill';
import { cardCautions } from '$src/report/card/cardCautions';
import { feederShortage, isFeederJudged } from '$src/report/feederShortage';
import { ownRows } from '$src/report/ownRows';
import { unusualHeat } from '$src/report/unusualHeat';
import { inventedPlan, inventedRecord } from './inventedRecord';

const A356 = metalNamed('A356')!;
const typed = { source: 'Typed in by you', confidence: 'yours' } as const;
const value = (number: number) => ({ value: number, ...typed });
const alloy = (thermal: OwnThermal): Metal => ({ ...A356, thermal });
const recordOf = (metal: Metal) =>
  inventedRecord({ plan: { ...inventedPlan, heat: heatPlanOf(metal, inventedPlan.section)! } });
const dwell = (metal: Metal): number => afterFill(recordOf(metal), null)!.ejection.earliest;

describe('a pour of an alloy of one’s own', () => {
  /** Freezing time is linear in L + c ΔT between coated walls: Flemings, Solidification Processing, 1974 (from memory). */
  it('has its dwell by its own latent heat, and by its own liquidus', () => {
    expect(dwell(alloy({ latentHeat: value(500e3) }))).toBeGreaterThan(1.1 * dwell(A356));
    expect(dwell(alloy({ liquidus: value(fromCelsius(580)) }))).not.toBeCloseTo(dwell(A356), 2);
    expect(dwell(alloy({ latentHeat: value(425e3) }))).toBe(dwell(A356));
  });

  it('has its feeder judged by its own shrinkage', () => {
    expect(isFeederJudged(recordOf(alloy({ latentHeat: value(500e3) })))).toBe(true);
    const asked = (share: number) => feederShortage(recordOf(alloy({ freezingShrinkage: value(share) })))!;
    const drawn = (share: number) => Number(/draw ([\d.]+) cm³/.exec(asked(share).reason.line)![1]);
    expect(drawn(0.08)).toBeGreaterThan(1.3 * drawn(0.053));
  });

  it('is usual or not by its own ranges, told as this metal’s', () => {
    const ranges: OwnThermal = {
      pouringRange: { low: fromCelsius(640), high: fromCelsius(700), ...typed },
      dieRange: { low: fromCelsius(200), high: fromCelsius(260), ...typed },
    };
    const plan = (metal: Metal) => ({ ...inventedPlan, heat: heatPlanOf(metal, inventedPlan.section)! });
    expect(unusualHeat(plan(A356))).toEqual([]);
    const own = plan(alloy(ranges));
    // Poured at 715 °C as A356 is, into a die in the middle of the range of its own.
    expect(unusualHeat(own).map(({ line }) => line)).toEqual([
      'The metal at 715 °C is over its range: usual 640 to 700 °C for this metal; overheated metal takes up gas, shrinks more and wears the die.',
    ]);
    const regions = own.heat.regions.map((region) => ({ ...region, dieTemperature: fromCelsius(350) }));
    expect(unusualHeat({ ...own, heat: { ...own.heat, regions } })[1]!.line).toContain(
      'usual 200 to 260 °C for this metal',
    );
  });

  it('warns on its card that another alloy may hold other dangers', () => {
    expect(cardCautions('A356').at(-1)).not.toContain('Another alloy');
    expect(cardCautions('A356', true).at(-1)).toContain('Another alloy may hold other dangers');
  });

  it('is told by what was typed, in the units of the page', () => {
    const metal = alloy({
      liquidus: value(fromCelsius(600)),
      latentHeat: value(390e3),
      dieRange: { low: fromCelsius(200), high: fromCelsius(260), ...typed },
    });
    expect(ownRows(A356)).toEqual([]);
    expect(ownRows(metal).map(({ name, text, unit }) => `${name} ${text} ${unit}`)).toEqual([
      'liquidus 600 °C',
      'latent heat 390 kJ/kg',
      'usual die 200–260 °C',
    ]);
    expect(ownRows(metal, { length: 'in', mass: 'lb', temperature: 'degF' })[0]).toMatchObject({
      text: '1112',
      unit: '°F',
    });
  });
});
