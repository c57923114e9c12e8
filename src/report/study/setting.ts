import type { PourPlan } from '$src/core/pour/plan';

/** What a setting measures; decides how it is shown. */
export type SettingQuantity =
  | 'angle'
  | 'contact angle'
  | 'rate'
  | 'time'
  | 'length'
  | 'level'
  | 'mass'
  | 'temperature'
  | 'heat transfer'
  | 'share'
  | 'turns'
  | 'count';

/** Settings are put into a plan in this order, so that a charge is read in the section and tilt it is poured with. */
export const GROUPS = ['section', 'tilt', 'pace', 'metal', 'heat', 'computation', 'charge'] as const;
export type SettingGroup = (typeof GROUPS)[number];

/** One number of a pour that a study can vary. All values SI. */
export interface Setting {
  readonly id: string;
  readonly name: string;
  readonly quantity: SettingQuantity;
  readonly group: SettingGroup;
  readonly least: number;
  readonly most: number;
  /** Present value; null when the plan has no such setting. */
  readonly read: (plan: PourPlan) => number | null;
  /** The plan with that value; null when there is no such pour. Does not check machine or section. */
  readonly apply: (plan: PourPlan, value: number) => PourPlan | null;
}
