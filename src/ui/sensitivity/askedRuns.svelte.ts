import { SvelteMap } from 'svelte/reactivity';
import type { CellId } from '$src/cells/kinds';
import { planHash } from '$src/core/pour/planHash';
import type { PourRecord } from '$src/core/pour/record';
import { type PointFigures, pointResult } from '$src/report/study/pointFigures';
import { bench } from '../bench.svelte';
import { pool } from '../study/studies.svelte';
import { SensitivityRun } from './sensitivityRun.svelte';

/** What was asked of pours, by the hash of the plan it was asked of: another name, or a way back to it, changes no figure. */
const asked = new SvelteMap<string, SensitivityRun>();
/** The plan each pour was asked of last: what was found before its last change is still shown, as such. */
const lastOf = new SvelteMap<CellId, string>();
/** Plans of which it is known what is kept. */
const lookedUp = new Set<string>();
/** Each is some ten figures for some twenty pours; beyond this the oldest go. */
const KEPT = 50;

/** What was asked of that very plan; null when nothing was. */
export const askedOf = (hash: string | null): SensitivityRun | null =>
  hash === null ? null : (asked.get(hash) ?? null);

/** What was asked of the pour as it now stands, else of the pour before its last change. */
export const sensitivityOf = (pour: CellId, hash: string | null): SensitivityRun | null =>
  askedOf(hash) ?? askedOf(lastOf.get(pour) ?? null);

/** Asks of the pour as it now stands: the record that is shown may be from before a change made a moment ago. */
export function askHowSure(pour: CellId, shown: PourRecord): void {
  const evaluation = bench.evaluation(pour);
  const plan = evaluation.state === 'needs a run' ? evaluation.plan : shown.plan;
  const hash = planHash(plan);
  askedOf(lastOf.get(pour) ?? null)?.stop();
  const run = new SensitivityRun(pool, plan, hash === shown.planHash ? figuresOf(shown) : null);
  keep(pour, hash, run);
  void run.start();
}

/** Takes what is kept of the pour that is shown from an earlier visit, when that is all of it; pours nothing. */
export async function lookUpHowSure(pour: CellId, shown: PourRecord): Promise<void> {
  const hash = shown.planHash;
  if (asked.has(hash)) {
    lastOf.set(pour, hash);
    return;
  }
  if (lookedUp.has(hash)) return;
  lookedUp.add(hash);
  const own = figuresOf(shown);
  const run = own && (await SensitivityRun.known(pool, shown.plan, own));
  if (run && !asked.has(hash)) keep(pour, hash, run);
}

/** Null of a run that broke, or that was stopped before its end. */
function figuresOf(record: PourRecord): PointFigures | null {
  const result = record.outcome.kind === 'stopped by the user' ? null : pointResult(record);
  return result && 'figures' in result ? result.figures : null;
}

function keep(pour: CellId, hash: string, run: SensitivityRun): void {
  asked.delete(hash);
  asked.set(hash, run);
  lastOf.set(pour, hash);
  const [oldest] = asked.keys();
  if (asked.size > KEPT && oldest !== undefined) asked.delete(oldest);
}

/** The cell has gone: what nobody can see runs no further. What is done stays known. */
export function endHowSure(pour: CellId): void {
  askedOf(lastOf.get(pour) ?? null)?.stop();
  lastOf.delete(pour);
}
