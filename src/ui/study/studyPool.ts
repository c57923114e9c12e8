import type { PourPlan } from '$src/core/pour/plan';
import { fromMilliseconds } from '$src/core/units';
import { pointResult } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import type { PourClient } from '$src/worker/client';
import { Pace } from '../pace';

/** Figures are some hundred bytes each; beyond this the oldest go. */
const KEPT = 20_000;
/** How long a study waits for the pours of the page before it looks again [ms]. */
const PATIENCE = 120;

export interface StudyPoolSettings {
  readonly makeClient: () => Promise<PourClient>;
  readonly atOnce: number;
  /** Pours of the book are under way: they come first. */
  readonly isBusy: () => boolean;
  /** How long the page's own pours took on such a mesh, one of them [s]; null when none was poured. */
  readonly paceOfPage?: (meshCells: number) => number | null;
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
  readonly #pace = new Pace();

  constructor(settings: StudyPoolSettings) {
    this.#settings = settings;
  }

  /** The figures of that plan from this visit or an earlier one; null when it would have to be poured. Never rejects. */
  async known(planHash: string): Promise<PointResult | null> {
    const known = this.#kept.get(planHash);
    if (known) return known;
    const stored = await this.#settings.stored?.get(planHash);
    return stored ? this.#keep(planHash, stored) : null;
  }

  /** About how long so many pours on that mesh take [s]; null before any was poured in this visit. */
  timeFor(pours: number, meshCells: number): number | null {
    const each = this.#pace.each(meshCells) ?? this.#settings.paceOfPage?.(meshCells) ?? null;
    return each === null ? null : (each * pours) / this.#settings.atOnce;
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
      const known = await this.known(planHash);
      if (known) return known;
      await this.#quiet();
      this.#client ??= this.#settings.makeClient();
      const client = await this.#client;
      const begin = performance.now();
      const record = await client.run(plan, () => undefined).done;
      this.#pace.note(fromMilliseconds(performance.now() - begin), plan.computation.meshCells);
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
