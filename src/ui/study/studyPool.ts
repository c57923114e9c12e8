import type { PourPlan } from '$src/core/pour/plan';
import { pointResult } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import type { PourClient } from '$src/worker/client';

/** Figures are some hundred bytes each; beyond this the oldest go. */
const KEPT = 20_000;
/** How long a study waits for the pours of the page before it looks again [ms]. */
const PATIENCE = 120;

export interface StudyPoolSettings {
  readonly makeClient: () => Promise<PourClient>;
  readonly atOnce: number;
  /** Pours of the book are under way: they come first. */
  readonly isBusy: () => boolean;
  /** Figures kept from earlier visits. Neither may reject. */
  readonly stored?: {
    get(planHash: string): Promise<PointResult | null>;
    put(planHash: string, result: PointResult): Promise<void>;
  };
}

/** Runs the pours of studies and keeps their figures by plan hash, never their records. */
export class StudyPool {
  readonly #settings: StudyPoolSettings;
  readonly #kept = new Map<string, PointResult>();
  readonly #underWay = new Map<string, Promise<PointResult>>();
  #client: Promise<PourClient> | null = null;

  constructor(settings: StudyPoolSettings) {
    this.#settings = settings;
  }

  /** The figures of that plan: known, under way, or computed now. Never rejects; a failure is a result. */
  result(plan: PourPlan, planHash: string): Promise<PointResult> {
    const known = this.#kept.get(planHash);
    if (known) return Promise.resolve(known);
    const before = this.#underWay.get(planHash);
    if (before) return before;
    const computing = this.#compute(plan, planHash);
    this.#underWay.set(planHash, computing);
    return computing;
  }

  /** Works through a list, as many at once as there are cores, until it is over or nothing is left. */
  async each<T>(items: readonly T[], isOver: () => boolean, work: (item: T) => Promise<void>): Promise<void> {
    const waiting = [...items];
    const seats = Array.from({ length: this.#settings.atOnce }, async () => {
      for (let next = waiting.shift(); next !== undefined && !isOver(); next = waiting.shift())
        await work(next);
    });
    await Promise.all(seats);
  }

  async #quiet(): Promise<void> {
    while (this.#settings.isBusy()) await new Promise((resolve) => setTimeout(resolve, PATIENCE));
  }

  async #compute(plan: PourPlan, planHash: string): Promise<PointResult> {
    try {
      const stored = await this.#settings.stored?.get(planHash);
      if (stored) return this.#keep(planHash, stored);
      await this.#quiet();
      this.#client ??= this.#settings.makeClient();
      const record = await (await this.#client).run(plan, () => undefined).done;
      const result = pointResult(record);
      void this.#settings.stored?.put(planHash, result);
      return this.#keep(planHash, result);
    } catch (error) {
      return { failed: error instanceof Error ? error.message : String(error) };
    } finally {
      this.#underWay.delete(planHash);
    }
  }

  #keep(planHash: string, result: PointResult): PointResult {
    this.#kept.set(planHash, result);
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > KEPT && oldest !== undefined) this.#kept.delete(oldest);
    return result;
  }
}
