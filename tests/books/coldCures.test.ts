import { expect, it } from 'vitest';
import type { HeatPlan, RegionHeat } from '$src/core/heat/heatPlan';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { planAt } from '$src/report/study/planAt';
import { computed } from './computed';
import { coarsePlanOf } from './planOf';
import { readWindow } from './sources/class/readWindow';

/** What a lap advises must help in the computation itself, and most of it first. */

const plan = coarsePlanOf(readWindow, 'slow');
const heat = plan.heat!;
const withRegions = (change: Partial<RegionHeat>): HeatPlan => ({
  ...heat,
  regions: heat.regions.map((region) => ({ ...region, ...change })),
});
const poured = (changed: HeatPlan) => computed({ ...plan, heat: changed });

it('a wall that goes stiff is filled by a quicker tilt, by a warmer die and by a coat that insulates more', () => {
  expect(computed(plan).figures.lap?.kind).toBe('misrun');
  const quicker = planAt(plan, { 'tilt.rate': fromDegrees(8) });
  if ('refused' in quicker) throw new Error(quicker.refused.reason);
  const cured = [
    computed(quicker.plan),
    poured(withRegions({ dieTemperature: fromCelsius(450) })),
    poured(withRegions({ transfer: 1000 })),
  ];
  for (const { figures } of cured) {
    expect(figures.filledTime).not.toBeNull();
    expect(figures.lap?.kind).toBe('none');
  }
});

it('hotter metal, to the end of its range, helps and does not do it alone', () => {
  const hotter = poured({ ...heat, startTemperature: fromCelsius(760) }).figures;
  expect(hotter.finalShare).toBeGreaterThan(1.2 * computed(plan).figures.finalShare);
  expect(hotter.lap?.kind).toBe('misrun');
});

/** Common practice, no source: metal is not heated over its range to make it run, for it takes up gas and shrinks more. */
it('is what the cure of a lap says, hotter metal last', () => {
  const { cure } = computed(plan).folds.find(({ kind }) => kind === 'lap')!;
  expect(cure).toMatch(/^Fill the section faster, warm the die or use a .*coat\. Hotter metal helps less/);
});
