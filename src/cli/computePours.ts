import type { PourRecord } from '$src/core/pour/record';
import type { NamedPlan } from './choosePours';
import { computeEach } from './computeEach';

export interface ComputedPour {
  readonly name: string;
  readonly record: PourRecord;
}

/** Computes the pours of a book on all cores; answers in the order given. Rejects when one cannot be computed. */
export async function computePours(plans: readonly NamedPlan[]): Promise<ComputedPour[]> {
  const records = await computeEach(
    plans.map(({ plan }) => plan),
    { record: (record) => record },
  );
  return records.map((record, index) => ({ name: plans[index]!.name, record }));
}
