import type { HeatPlan } from '$src/core/heat/heatPlan';
import type { PourPlan } from '$src/core/pour/plan';
import { fromCelsius } from '$src/core/units';
import type { Setting } from './setting';

type MayHaveHeat = PourPlan;
type Heat = HeatPlan;

const heatOf = (plan: MayHaveHeat): Heat | null => plan.heat ?? null;

function withHeat(plan: MayHaveHeat, change: (heat: Heat) => Heat): PourPlan | null {
  const heat = heatOf(plan);
  if (!heat) return null;
  const changed: MayHaveHeat = { ...plan, heat: change(heat) };
  return changed;
}

const mean = (values: readonly number[]): number | null =>
  values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : null;

const meanDie = (heat: Heat): number | null => mean(heat.regions.map((region) => region.dieTemperature));
const meanTransfer = (heat: Heat): number | null => mean(heat.regions.map((region) => region.transfer));

const eachRegion =
  (change: (region: HeatPlan['regions'][number]) => Partial<HeatPlan['regions'][number]>) =>
  (heat: Heat): Heat => ({
    ...heat,
    regions: heat.regions.map((region) => ({ ...region, ...change(region) })),
  });

const read = (part: (heat: Heat) => number | null) => (plan: PourPlan) => {
  const heat = heatOf(plan);
  return heat && part(heat);
};

/** Settings of a pour that is computed with heat. Means over the regions: every region moves by as much. */
export const HEAT_SETTINGS: readonly Setting[] = [
  {
    id: 'heat.metal',
    name: 'metal temperature at tilt',
    quantity: 'temperature',
    group: 'heat',
    least: fromCelsius(300),
    most: fromCelsius(1400),
    read: read((heat) => heat.startTemperature),
    apply: (plan, value) => withHeat(plan, (heat) => ({ ...heat, startTemperature: value })),
  },
  {
    id: 'heat.die',
    name: 'die temperature (mean of all regions)',
    quantity: 'temperature',
    group: 'heat',
    least: fromCelsius(0),
    most: fromCelsius(600),
    read: read(meanDie),
    apply: (plan, value) =>
      withHeat(plan, (heat) => {
        const by = value - (meanDie(heat) ?? value);
        return eachRegion(({ dieTemperature }) => ({ dieTemperature: dieTemperature + by }))(heat);
      }),
  },
  {
    id: 'heat.transfer',
    name: 'heat transfer through the coat (mean of all regions)',
    quantity: 'heat transfer',
    group: 'heat',
    least: 50,
    most: 20_000,
    read: read(meanTransfer),
    apply: (plan, value) =>
      withHeat(plan, (heat) => {
        const by = value / (meanTransfer(heat) ?? value);
        return eachRegion(({ transfer }) => ({ transfer: transfer * by }))(heat);
      }),
  },
];
