import { expect, it } from 'vitest';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { fromCelsius } from '$src/core/units';
import { pourPart } from '$src/report/bookPage/pourPart';
import { unusualHeat } from '$src/report/unusualHeat';
import { inventedPlan, inventedRecord } from './inventedRecord';

const { section } = inventedPlan;
const planOf = (base: string, metal: number | null, die: number | null, basin = die) => {
  const heat = heatPlanOf(metalNamed(base)!, section)!;
  const regions = heat.regions.map((region, k) => {
    const celsius = k === 0 ? basin : die;
    return celsius === null ? region : { ...region, dieTemperature: fromCelsius(celsius) };
  });
  const startTemperature = metal === null ? heat.startTemperature : fromCelsius(metal);
  return { ...inventedPlan, heat: { ...heat, regions, startTemperature } };
};
const lines = (plan: ReturnType<typeof planOf>) => unusualHeat(plan).map(({ line }) => line);

it('says nothing of a metal and a die within what is usual', () => {
  for (const base of ['A356', 'AlSi12', 'aluminium bronze', 'AZ91'])
    expect(lines(planOf(base, null, null))).toEqual([]);
  expect(unusualHeat({ ...inventedPlan, heat: null })).toEqual([]);
});

/** Usual ranges from `ThermalMetal`: A356 680 to 760 °C into dies of 300 to 400 °C, from memory; brass trials at 95 to 100 °C, read. */
it('tells which way metal or die lie outside, and what is the matter with it', () => {
  expect(lines(planOf('A356', 790, null))).toEqual([
    'The metal at 790 °C is over its range: usual 680 to 760 °C for A356; overheated metal takes up gas, shrinks more and wears the die.',
  ]);
  expect(lines(planOf('A356', 640, 150))).toEqual([
    expect.stringMatching(/^The metal at 640 °C is under its range/),
    expect.stringMatching(
      /^The die at 150 °C is under its range: usual 300 to 400 °C for A356; what is thin may freeze before it is full\.$/,
    ),
  ]);
  expect(lines(planOf('brass', null, 350))).toEqual([
    expect.stringMatching(/^The die at 350 °C is over its range: usual 95 to 100 °C for brass/),
  ]);
});

it('tells of damp on a die that is not hot enough to be dry', () => {
  const [cold] = lines(planOf('A356', null, 60));
  expect(cold).toMatch(
    /may freeze before it is full, and damp, which explodes under metal, may stand on it\.$/,
  );
});

it('leaves out the basin, which is often kept hotter, and takes the units of the page', () => {
  expect(lines(planOf('A356', null, 350, 450))).toEqual([]);
  const [one] = unusualHeat(planOf('A356', 790, null), {
    length: 'in',
    mass: 'lb',
    temperature: 'degF',
  });
  expect(one!.line).toContain('1454 °F is over its range: usual 1256 to 1400 °F');
});

it('stands in the page that plays, too', () => {
  expect(pourPart(inventedRecord({ plan: planOf('A356', 790, null) }), 'hot')).toContain('is over its range');
});
