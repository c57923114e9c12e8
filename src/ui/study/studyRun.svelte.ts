import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { coarsePoints, type Grid, gridOf, valuesAt } from '$src/report/study/grid';
import { type Margin, marginsOf } from '$src/report/study/margins';
import { namedAxes } from '$src/report/study/namedAxes';
import { openingsOf, type TriedChange } from '$src/report/study/openings';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { pointsWanted } from '$src/report/study/refine';
import { type PointResult, type Region, regionOf } from '$src/report/study/region';
import type { Study } from '$src/report/study/study';
import type { NamedAxis } from '$src/report/study/studyFile';
import { studyPlan } from '$src/report/study/studyPlan';
import type { StudyPool } from './studyPool';

export type StudyState = 'waiting' | 'running' | 'stopped' | 'fresh';

/** What is being done at present. */
export type Stage =
  | 'First look'
  | 'Following the edges'
  | 'Measuring the margins'
  | 'Trying changes that may open a window';

/** Results are shown this often while more come [ms]. */
const SHOW_EVERY = 150;

/** One study under way or done: points, margins of the set point, and changes tried when nothing is sound. */
export class StudyRun {
  readonly plan: PourPlan;
  readonly study: Study;
  readonly axes: readonly NamedAxis[];
  readonly grid: Grid;
  results: ReadonlyMap<number, PointResult> = $state.raw(new Map());
  state: StudyState = $state('waiting');
  stage: Stage = $state('First look');
  margins: readonly Margin[] | null = $state.raw(null);
  tried: readonly TriedChange[] | null = $state.raw(null);
  setRegion: Region | null = $state(null);
  /** Share of the work done, as far as it is known: edges lead to more edges. */
  done: number = $state(0);

  readonly #pool: StudyPool;
  readonly #found = new Map<number, PointResult>();
  #lastShown = 0;
  #turn = 0;

  constructor(pool: StudyPool, plan: PourPlan, study: Study) {
    this.#pool = pool;
    this.plan = studyPlan(plan, study);
    this.study = study;
    this.axes = namedAxes(study.axes, plan);
    this.grid = gridOf(study);
  }

  /** The set point, one value for each axis; null when the pour has no such value. */
  get setPoint(): readonly number[] | null {
    const values = this.axes.flatMap(({ setPoint }) => setPoint ?? []);
    return values.length === this.axes.length ? values : null;
  }

  /** Computes what is not known yet; goes on where it was stopped. */
  async start(): Promise<void> {
    if (this.state === 'running') return;
    this.state = 'running';
    const turn = ++this.#turn;
    const isOver = (): boolean => turn !== this.#turn;
    for (const stage of [this.#points, this.#margins, this.#openings]) {
      await stage.call(this, isOver);
      if (isOver()) return;
    }
    this.done = 1;
    this.state = 'fresh';
  }

  stop(): void {
    if (this.state !== 'running') return;
    this.#turn++;
    this.state = 'stopped';
    this.#show(true);
  }

  /** Computes one point that was only taken from its neighbour. */
  async compute(point: number): Promise<void> {
    const result = await this.#resultAt(valuesAt(this.grid, point));
    this.#found.set(point, result);
    this.#show(true);
  }

  async #points(isOver: () => boolean): Promise<void> {
    const regions = new Map<number, Region>();
    for (const [point, result] of this.#found) regions.set(point, regionOf(result));
    const first = coarsePoints(this.grid).length;
    for (
      let wave = pointsWanted(this.grid, regions);
      wave.length > 0;
      wave = pointsWanted(this.grid, regions)
    ) {
      this.stage = regions.size < first ? 'First look' : 'Following the edges';
      const total = regions.size + wave.length;
      await this.#pool.each(wave, isOver, async (point) => {
        const result = await this.#resultAt(valuesAt(this.grid, point));
        this.#found.set(point, result);
        regions.set(point, regionOf(result));
        this.done = (0.9 * regions.size) / Math.max(total, this.grid.count / 2);
        this.#show(false);
      });
      this.#show(true);
      if (isOver()) return;
    }
  }

  async #margins(isOver: () => boolean): Promise<void> {
    const at = this.setPoint;
    if (at === null || this.margins) return;
    this.stage = 'Measuring the margins';
    const setValues = Object.fromEntries(this.axes.map(({ setting }, index) => [setting, at[index]!]));
    this.setRegion = regionOf(await this.#resultAt(setValues));
    if (isOver() || this.setRegion !== 'sound' || this.axes.length < 2) return;
    this.margins = await marginsOf({ axes: this.axes, at, regionAt: this.#regionAt(isOver) });
  }

  async #openings(isOver: () => boolean): Promise<void> {
    const hasSound =
      this.setRegion === 'sound' || [...this.#found.values()].some((one) => regionOf(one) === 'sound');
    if (hasSound || this.axes.length < 2 || this.tried) return;
    this.stage = 'Trying changes that may open a window';
    const { plan, grid } = this;
    this.tried = await openingsOf({ plan, grid, results: this.#found, regionAt: this.#regionAt(isOver) });
  }

  #regionAt(isOver: () => boolean): (values: SettingValues) => Promise<Region | null> {
    return async (values) => (isOver() ? null : regionOf(await this.#resultAt(values)));
  }

  async #resultAt(values: SettingValues): Promise<PointResult> {
    const at = planAt(this.plan, values);
    return 'refused' in at ? at : this.#pool.result(at.plan, planHash(at.plan));
  }

  #show(now: boolean): void {
    const time = performance.now();
    if (!now && time - this.#lastShown < SHOW_EVERY) return;
    this.#lastShown = time;
    this.results = new Map(this.#found);
  }
}
