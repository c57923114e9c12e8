import { SvelteMap } from 'svelte/reactivity';
import type { CellId } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import { pool } from '../study/studies.svelte';
import { SensitivityRun } from './sensitivityRun.svelte';

/** What was asked of pours, by cell: told beside the verdict and in the part of its own. */
const asked = new SvelteMap<CellId, SensitivityRun>();

export const sensitivityOf = (pour: CellId): SensitivityRun | null => asked.get(pour) ?? null;

export function askHowSure(pour: CellId, plan: PourPlan): void {
  asked.get(pour)?.stop();
  const run = new SensitivityRun(pool, plan);
  asked.set(pour, run);
  void run.start();
}

/** The cell has gone. */
export function forgetHowSure(pour: CellId): void {
  asked.get(pour)?.stop();
  asked.delete(pour);
}
