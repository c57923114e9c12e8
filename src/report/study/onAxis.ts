import type { PourPlan } from '$src/core/pour/plan';
import type { InputWords } from '../inputWord';
import { inputWords } from '../inputWords';
import { planAt } from './planAt';
import { settingNamed } from './settings';

/** Shares of a value; values that are worked out of one another come back with round-off. */
const SAME = 1e-6;

/**
 * Where a pour lies on the axis of a study of another pour [unit of the setting]: its own value of what is varied; null where
 * it differs in anything else that decides how its metal runs. Meshes are left aside.
 */
export function placeOnAxis(base: PourPlan, setting: string, plan: PourPlan): number | null {
  const value = settingNamed(plan, setting)?.read(plan) ?? null;
  if (value === null || !settingNamed(base, setting)) return null;
  const at = planAt(base, { [setting]: value });
  return 'plan' in at && isSame(deciding(at.plan), deciding(plan)) ? value : null;
}

const deciding = (plan: PourPlan): unknown[] =>
  inputWords(plan)
    .filter(({ group, isAside }: InputWords) => group !== 'computation' && !isAside)
    .map(({ name, decides }) => [name, decides]);

function isSame(one: unknown, other: unknown): boolean {
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other), SAME);
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return one === other;
  const [a, b] = [Object.entries(one), new Map(Object.entries(other))];
  return a.length === b.size && a.every(([key, part]) => b.has(key) && isSame(part, b.get(key)));
}
