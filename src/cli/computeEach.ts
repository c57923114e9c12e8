import { availableParallelism } from 'node:os';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { openSeat, type Seat } from './seat';

/** What is to be kept of a pour; records are large, so a study keeps only their figures. */
export interface Keep<T> {
  readonly record: (record: PourRecord) => T;
  /** A pour the solver refused; without it the whole computation ends there. */
  readonly refused?: (reason: string) => T;
}

/** Computes pours on all cores, one worker each; answers in the order given. Rejects when a worker dies. */
export async function computeEach<T>(plans: readonly PourPlan[], keep: Keep<T>): Promise<T[]> {
  const kept: T[] = [];
  const waiting = [...plans.entries()];
  const seats = Array.from({ length: Math.min(availableParallelism(), plans.length) }, async () => {
    const seat = openSeat();
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const [index, plan] = next;
        kept[index] = await computeOne(seat, plan, keep);
      }
    };
    try {
      await Promise.race([work(), seat.death]);
    } finally {
      await seat.close();
    }
  });
  await Promise.all(seats);
  return kept;
}

async function computeOne<T>(seat: Seat, plan: PourPlan, keep: Keep<T>): Promise<T> {
  try {
    return keep.record(await seat.run(plan));
  } catch (error) {
    if (!keep.refused) throw error;
    return keep.refused(error instanceof Error ? error.message : String(error));
  }
}
