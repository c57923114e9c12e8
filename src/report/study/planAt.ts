import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';
import { checkSection } from '$src/core/section/checkSection';
import { millimetres as mm } from '$src/core/section/millimetres';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { LEAST_OPENING } from './basin';
import { GROUPS, type Setting } from './setting';
import { settingNamed } from './settings';

/** Why there is no such pour: the machine cannot turn so, the outline is none, no charge stands so, or it stands in the die. */
export interface Refusal {
  readonly by: 'machine' | 'section' | 'charge' | 'ladle';
  readonly reason: string;
}

export type PlanAt = { readonly plan: PourPlan } | { readonly refused: Refusal };

/** Values of settings by id, SI. */
export type SettingValues = Readonly<Record<string, number>>;

/**
 * The pour with some of its settings changed. Whatever is not changed stays, the volume of the charge too.
 * @throws RangeError when a setting is none of this pour's (checks for people come before, in `cells`)
 */
export function planAt(base: PourPlan, values: SettingValues): PlanAt {
  const settings = inOrder(base, values);
  const isCharge = ({ group }: Setting): boolean => group === 'charge';
  const shaped = applied(
    base,
    settings.filter((setting) => !isCharge(setting)),
    values,
  );
  if ('refused' in shaped) return shaped;
  // A charge cannot be read in a section or tilt that is none.
  const refused = refusalOf(base, shaped.plan);
  return refused ? { refused } : applied(shaped.plan, settings.filter(isCharge), values);
}

function applied(base: PourPlan, settings: readonly Setting[], values: SettingValues): PlanAt {
  let plan = base;
  for (const setting of settings) {
    const next = setting.apply(plan, values[setting.id]!);
    if (!next) return { refused: impossible(setting) };
    plan = next;
  }
  return { plan };
}

function inOrder(base: PourPlan, values: SettingValues): Setting[] {
  const settings = Object.keys(values).map((id) => {
    const setting = settingNamed(base, id);
    if (!setting) throw new RangeError(`setting of a study: got ${id}, expected one of the pour's`);
    return setting;
  });
  return settings.toSorted((a, b) => GROUPS.indexOf(a.group) - GROUPS.indexOf(b.group));
}

function refusalOf(base: PourPlan, plan: PourPlan): Refusal | null {
  const tilt = plan.tilt === base.tilt ? undefined : checkTilt(plan.tilt).issues[0];
  if (tilt) return { by: 'machine', reason: textOf(tilt) };
  const section = plan.section === base.section ? undefined : checkSection(plan.section)[0];
  return section ? { by: 'section', reason: textOf(section) } : null;
}

const textOf = ({ message, remedy }: Issue): string => `${message} ${remedy}`;

function impossible({ group, name }: Setting): Refusal {
  if (group === 'section')
    return {
      by: 'section',
      reason: `The roof would leave too little of the basin open to ladle into: less than ${mm(LEAST_OPENING)} mm.`,
    };
  if (group === 'pace')
    return { by: 'machine', reason: 'The stroke would be over before the machine has come up to speed.' };
  return {
    by: 'charge',
    reason: `No charge gives that ${name}: it would stand over a rim, or run out on the way.`,
  };
}
