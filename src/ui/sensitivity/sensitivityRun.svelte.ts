import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import type { PageUnits } from '$src/core/units';
import { onPreviewMesh, type Variation, variationsOf } from '$src/report/sensitivity';
import type { PointFigures } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import type { StudyPool } from '../study/studyPool';

/** What one variation gave: figures, or why there are none. */
export type Varied = { readonly figures: PointFigures } | { readonly reason: string };

/** One pour asked how sure it is: the pour itself on the preview mesh, then each variation. */
export class SensitivityRun {
  /** Name of the plan as it stood when asked. */
  readonly planHash: string;
  readonly variations: readonly Variation[];
  base: PointFigures | null = $state.raw(null);
  results: ReadonlyMap<string, Varied> = $state.raw(new Map());
  state: 'running' | 'stopped' | 'done' | 'failed' = $state('running');
  /** Why even the pour itself gave nothing. */
  reason: string = $state('');

  readonly #pool: StudyPool;
  readonly #plan: PourPlan;
  readonly #asked: PourPlan;

  constructor(pool: StudyPool, plan: PourPlan) {
    this.#pool = pool;
    this.#asked = plan;
    this.#plan = onPreviewMesh(plan);
    this.planHash = planHash(plan);
    this.variations = variationsOf(plan);
  }

  /** The variations with their steps in the units of a book. */
  variationsIn(units: PageUnits): readonly Variation[] {
    return variationsOf(this.#asked, units);
  }

  get done(): number {
    return this.results.size / this.variations.length;
  }

  async start(): Promise<void> {
    const isOver = (): boolean => this.state !== 'running';
    const own = variedOf(await this.#pool.result(this.#plan, planHash(this.#plan)));
    if (isOver()) return;
    if ('reason' in own) {
      this.reason = own.reason;
      this.state = 'failed';
      return;
    }
    this.base = own.figures;
    await this.#pool.each(this.variations, isOver, (variation) => this.#vary(variation));
    if (!isOver()) this.state = 'done';
  }

  /** What is done stays; runs under way end by themselves in a moment. */
  stop(): void {
    if (this.state === 'running') this.state = 'stopped';
  }

  async #vary({ id, at }: Variation): Promise<void> {
    const result = 'refused' in at ? at : await this.#pool.result(at.plan, planHash(at.plan));
    if (this.state !== 'running') return;
    this.results = new Map(this.results).set(id, variedOf(result));
  }
}

function variedOf(result: PointResult): Varied {
  if ('figures' in result) return { figures: result.figures };
  return { reason: 'refused' in result ? result.refused.reason : result.failed };
}
