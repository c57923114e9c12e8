import type { PourPlan } from '$src/core/pour/plan';
import { inputWords } from './inputWords';

/** One input before and after, in words. */
export interface InputChange {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** What changed between the plan a record belongs to and the present one. Mesh cells are left out: previews differ in them. */
export function inputChanges(before: PourPlan, after: PourPlan): InputChange[] {
  const now = inputWords(after);
  return inputWords(before).flatMap((old, index) => {
    const next = now[index]!;
    if (old.name === 'mesh cells' || JSON.stringify(old.decides) === JSON.stringify(next.decides)) return [];
    return [{ name: old.name, from: old.text, to: next.text }];
  });
}
