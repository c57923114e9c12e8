import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import type { PageUnits } from '$src/core/units';
import { coarseContradicts, onPreviewMesh, type Variation, variationsOf } from '$src/report/sensitivity';
import type { PointFigures } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import type { StudyPool } from '../study/studyPool';

/** What one variation gave: figures, or why there are none. */
export type Varied = { readonly figures: PointFigures } | { readonly reason: string };

/** Gives a pour, or null when it would have to be computed and nothing may be. */
type Pour = (plan: PourPlan) => Promise<PointResult | null>;

/** One pour asked how sure it is: the pour itself on the preview mesh, then each variation. */
export class SensitivityRun {
  /** Name of the plan as it stood when asked. */
  readonly planHash: string;
  readonly #asked: PourPlan;
  /** Figures of the pour on its own mesh; null until they are known. */
  #own: PointFigures | null;
  readonly #pool: StudyPool;

  /** The pour itself on the coarse mesh. */
  coarse: PointFigures | null = $state.raw(null);
  /** The pour itself as all variations are computed: on the coarse mesh, or where that calls a sound pour otherwise, on its own. */
  base: PointFigures | null = $state.raw(null);
  /** The mesh cells of all variations. */
  meshCells: number = $state(0);
  variations: readonly Variation[] = $state.raw([]);
  results: ReadonlyMap<string, Varied> = $state.raw(new Map());
  state: 'running' | 'stopped' | 'done' | 'failed' = $state('running');
  /** Why even the pour itself gave nothing. */
  reason: string = $state('');

  constructor(pool: StudyPool, plan: PourPlan, own: PointFigures | null) {
    this.#pool = pool;
    this.#asked = plan;
    this.#own = own;
    this.planHash = planHash(plan);
    this.meshCells = onPreviewMesh(plan).computation.meshCells;
    this.variations = variationsOf(onPreviewMesh(plan));
  }

  /** All that was found in an earlier visit; null when some of it would have to be poured. */
  static async known(pool: StudyPool, plan: PourPlan, own: PointFigures): Promise<SensitivityRun | null> {
    // Most pours were never asked: that is known without making their variations.
    if (!(await pool.known(planHash(onPreviewMesh(plan))))) return null;
    const run = new SensitivityRun(pool, plan, own);
    await run.#go((one) => pool.known(planHash(one)));
    return run.state === 'done' ? run : null;
  }

  /** The variations with their steps in the units of a book. */
  variationsIn(units: PageUnits): readonly Variation[] {
    return variationsOf(this.#onMesh(), units);
  }

  /** It takes the pour's own mesh, since the coarse one contradicts it. */
  get isOnOwnMesh(): boolean {
    return this.base !== this.coarse;
  }

  get done(): number {
    return this.results.size / this.variations.length;
  }

  start(): Promise<void> {
    return this.#go((plan) => this.#pool.result(plan, planHash(plan)));
  }

  /** What is done stays; runs under way end by themselves in a moment. */
  stop(): void {
    if (this.state === 'running') this.state = 'stopped';
  }

  async #go(pour: Pour): Promise<void> {
    const isOver = (): boolean => this.state !== 'running';
    await this.#setBase(pour);
    if (isOver()) return;
    await this.#pool.each(this.variations, isOver, (variation) => this.#vary(variation, pour));
    if (!isOver()) this.state = 'done';
  }

  async #setBase(pour: Pour): Promise<void> {
    const coarse = await this.#figuresOf(onPreviewMesh(this.#asked), pour);
    if (!coarse) return;
    this.#own ??= await this.#figuresOf(this.#asked, pour);
    if (this.state !== 'running') return;
    this.coarse = coarse;
    this.base = coarse;
    if (!this.#own || !coarseContradicts(coarse, this.#own)) return;
    this.base = this.#own;
    this.meshCells = this.#asked.computation.meshCells;
    this.variations = variationsOf(this.#onMesh());
  }

  #onMesh(): PourPlan {
    return this.isOnOwnMesh ? this.#asked : onPreviewMesh(this.#asked);
  }

  async #figuresOf(plan: PourPlan, pour: Pour): Promise<PointFigures | null> {
    const result = await pour(plan);
    if (this.state !== 'running') return null;
    if (result && 'figures' in result) return result.figures;
    this.reason = result ? reasonOf(result) : '';
    this.state = result ? 'failed' : 'stopped';
    return null;
  }

  async #vary({ id, at }: Variation, pour: Pour): Promise<void> {
    const result = 'refused' in at ? at : await pour(at.plan);
    if (this.state !== 'running') return;
    if (result) this.results = new Map(this.results).set(id, variedOf(result));
    else this.state = 'stopped';
  }
}

function variedOf(result: PointResult): Varied {
  return 'figures' in result ? { figures: result.figures } : { reason: reasonOf(result) };
}

const reasonOf = (result: Exclude<PointResult, { figures: PointFigures }>): string =>
  'refused' in result ? result.refused.reason : result.failed;
