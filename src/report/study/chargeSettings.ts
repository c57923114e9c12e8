import { fillLevelFromVolume, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { headFromVolume, volumeFromHead } from '$src/core/level/head';
import type { PourPlan } from '$src/core/pour/plan';
import { SIZES } from '$src/core/section/sizes';
import { endOf } from '$src/core/tilt/endOf';
import type { Setting } from './setting';

function withVolume(plan: PourPlan, volume: number | null): PourPlan | null {
  return volume !== null && volume > 0 ? { ...plan, volume } : null;
}

/** Heaviest charge that is worth asking for [kg]. */
const HEAVIEST = 500;
const levels = { least: -SIZES.most / 10, most: SIZES.most / 10 };

/** How much metal. Whichever is not varied, the volume of the charge stays what it is when other settings vary. */
export const CHARGE_SETTINGS: readonly Setting[] = [
  {
    id: 'charge.mass',
    name: 'charge',
    quantity: 'mass',
    group: 'charge',
    least: 0,
    most: HEAVIEST,
    read: ({ volume, liquid }) => volume * liquid.density,
    apply: (plan, value) => withVolume(plan, value / plan.liquid.density),
  },
  {
    id: 'charge.fromLip',
    name: 'fill level over the lip',
    quantity: 'level',
    group: 'charge',
    ...levels,
    read: ({ section, tilt, volume }) => fillLevelFromVolume(section, tilt.start, volume),
    apply: (plan, value) => withVolume(plan, volumeFromFillLevel(plan.section, plan.tilt.start, value)),
  },
  {
    id: 'charge.head',
    name: 'head in the feeder',
    quantity: 'length',
    group: 'charge',
    least: 0,
    most: levels.most,
    read: (plan) => headFromVolume(plan.section, plan.tilt.start, endOf(plan.tilt), plan.volume),
    apply: (plan, value) =>
      withVolume(plan, volumeFromHead(plan.section, plan.tilt.start, endOf(plan.tilt), value)),
  },
];
