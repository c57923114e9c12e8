import { availableParallelism } from 'node:os';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { pointResult } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import { openSeat, type Seat } from './seat';

/** Computes pours on all cores, each once. */
export interface PourPool {
  result(plan: PourPlan): Promise<PointResult>;
  /** How many were asked for so far. */
  poured(): number;
  close(): Promise<unknown>;
}

export function openPool(): PourPool {
  const known = new Map<string, Promise<PointResult>>();
  const free: Seat[] = Array.from({ length: availableParallelism() }, openSeat);
  const all = [...free];
  const waiting: ((seat: Seat) => void)[] = [];
  const take = (): Promise<Seat> => {
    const seat = free.pop();
    return seat ? Promise.resolve(seat) : new Promise((resolve) => waiting.push(resolve));
  };
  const giveBack = (seat: Seat): void => {
    const next = waiting.shift();
    if (next) next(seat);
    else free.push(seat);
  };
  const compute = async (plan: PourPlan): Promise<PointResult> => {
    const seat = await take();
    const result = seat.run(plan).then(pointResult, (error: unknown) => ({ failed: String(error) }));
    try {
      return await Promise.race([result, seat.death]);
    } finally {
      giveBack(seat);
    }
  };
  return {
    poured: () => known.size,
    result: (plan) => {
      const hash = planHash(plan);
      const result = known.get(hash) ?? compute(plan);
      known.set(hash, result);
      return result;
    },
    close: () => Promise.all(all.map((seat) => seat.close())),
  };
}
