import { isFrontLed } from '$src/core/pour/ledByLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { simulate } from '$src/core/pour/simulate';

const known = new Map<string, PourRecord>();

/**
 * The record of a plan without its band. Test files that run in one process share what has been computed there, so a pour
 * of which several books or tests speak is run once: a record follows from its plan alone.
 */
export function computed(plan: PourPlan): PourRecord {
  const hash = planHash(plan);
  const record = known.get(hash) ?? run(plan);
  known.set(hash, record);
  return record;
}

function run(plan: PourPlan): PourRecord {
  const pour = isFrontLed(plan) ? simulate(plan) : runPour(plan);
  let step = pour.next();
  while (!step.done) step = pour.next();
  return step.value;
}
