import type { PourPlan } from '$src/core/pour/plan';
import { fromDegrees } from '$src/core/units';
import { CHARGE_SETTINGS } from './chargeSettings';
import { HEAT_SETTINGS } from './heatSettings';
import { sectionSettings } from './sectionSettings';
import type { Setting } from './setting';
import { TILT_SETTINGS } from './tiltSettings';

const OTHERS: readonly Setting[] = [
  {
    id: 'metal.contactAngle',
    name: 'contact angle',
    quantity: 'contact angle',
    group: 'metal',
    least: fromDegrees(90),
    most: fromDegrees(180),
    read: ({ liquid }) => liquid.contactAngle,
    apply: (plan, value) => ({ ...plan, liquid: { ...plan.liquid, contactAngle: value } }),
  },
  {
    id: 'computation.meshCells',
    name: 'mesh cells',
    quantity: 'count',
    group: 'computation',
    least: 20,
    most: 2000,
    read: ({ computation }) => computation.meshCells,
    apply: (plan, value) => ({
      ...plan,
      computation: { ...plan.computation, meshCells: Math.round(value) },
    }),
  },
];

/** Everything of this pour that a study can vary, what founders turn first at the top. */
export function settingsOf(plan: PourPlan): Setting[] {
  const all = [
    ...TILT_SETTINGS,
    ...CHARGE_SETTINGS,
    ...HEAT_SETTINGS,
    ...sectionSettings(plan.section),
    ...OTHERS,
  ];
  const mayBeMissing = new Set<Setting['group']>(['heat', 'tilt', 'pace']);
  return all.filter((setting) => !mayBeMissing.has(setting.group) || setting.read(plan) !== null);
}

/** The setting of that id; null when this pour has none such. */
export const settingNamed = (plan: PourPlan, id: string): Setting | null =>
  settingsOf(plan).find((setting) => setting.id === id) ?? null;

/** What a setting is called, also where a pour has none such. */
export const settingWords = (id: string): string =>
  [...TILT_SETTINGS, ...CHARGE_SETTINGS, ...HEAT_SETTINGS, ...OTHERS].find((setting) => setting.id === id)
    ?.name ?? id;
