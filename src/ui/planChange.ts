import type { PourPlan } from '$src/core/pour/plan';
import { METRIC, type PageUnits } from '$src/core/units';
import { type InputWords, isAlike } from '$src/report/inputWord';
import { inputWords } from '$src/report/inputWords';
import { capital, listText } from '$src/report/wording';

/** More names than this are a new pour, not a change. */
const NAMED = 3;

const isDifferent = (now: InputWords, before: InputWords | undefined): boolean =>
  before === undefined || !isAlike(now, before);

/** What changed between the plan a record was run from and the present one, as one sentence; null when nothing did. */
export function planChange(before: PourPlan, now: PourPlan, units: PageUnits = METRIC): string | null {
  const old = new Map(inputWords(before, units).map((input) => [input.name, input]));
  // The coarse run before the full one has a mesh of its own; that is no change of the user's.
  const changed = inputWords(now, units).filter(
    (input) => input.name !== 'mesh cells' && isDifferent(input, old.get(input.name)),
  );
  const [first] = changed;
  // Words round a charge to what a ladle can do; a run is exact, so the rest of a change is told too.
  if (!first) return before.volume === now.volume ? null : 'Charge changed a little.';
  if (changed.length > NAMED) return `${changed.length} inputs changed.`;
  if (changed.length > 1) return `${capital(listText(changed.map(({ name }) => name)))} changed.`;
  const [from, to] = [old.get(first.name)?.text, first.text];
  return from === to
    ? `${capital(first.name)} changed a little.`
    : `${capital(first.name)} changed from ${from} to ${to}.`;
}
