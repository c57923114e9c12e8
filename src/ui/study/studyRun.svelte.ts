import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { coarsePoints, type Grid, gridOf, valuesAt } from '$src/report/study/grid';
import { mapAnswer } from '$src/report/study/mapAnswer';
import { marginsWithin } from '$src/report/study/mapLine';
import { beyondMachine, type Margin, marginsOf } from '$src/report/study/margins';
import { namedAxes } from '$src/report/study/namedAxes';
import { openingsOf, type TriedChange } from '$src/report/study/openings';
import type { SettingValues } from '$src/report/study/planAt';
import { pointAt } from '$src/report/study/pointAt';
import { pointsWanted } from '$src/report/study/refine';
import { type PointResult, type Region, regionOf } from '$src/report/study/region';
import { spreadsOf } from '$src/report/study/repeatSpread';
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
  /** The pour it varies, as it was given. */
  readonly base: PourPlan;
  readonly axes: readonly NamedAxis[];
  readonly grid: Grid;
  results: ReadonlyMap<number, PointResult> = $state.raw(new Map());
  state: StudyState = $state('waiting');
  stage: Stage = $state('First look');
  #measured: readonly Margin[] | null = $state.raw(null);
  tried: readonly TriedChange[] | null = $state.raw(null);
  /** The pour as it is set, on the mesh of the study; computed first. */
  setResult: PointResult | null = $state.raw(null);
  setRegion: Region | null = $state(null);
  /** Margins of the set point, as far as what the map shows lets them reach. */
  readonly margins: readonly Margin[] | null = $derived.by(() =>
    marginsWithin(this.#measured, this.axes, mapAnswer(this.axes, this.results)),
  );
  /** Share of the work done, as far as it is known: edges lead to more edges. */
  done: number = $state(0);
  /** Points that have to be poured before anything else is known; null before `look` has told. 0 = only margins are left. */
  lacking: number | null = $state(null);

  readonly #pool: StudyPool;
  /** While looking nothing is poured. */
  #isLooking = false;
  readonly #found = new Map<number, PointResult>();
  #lastShown = 0;
  #turn = 0;

  constructor(pool: StudyPool, plan: PourPlan, study: Study) {
    this.#pool = pool;
    this.base = plan;
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

  /** How far repeats stray on each axis, either way; 0 where that is not known. */
  get spreads(): readonly number[] {
    return spreadsOf(this.study, this.plan);
  }

  /** Points that were poured, not those refused beforehand. */
  get poured(): number {
    return [...this.results.values()].filter((result) => !('refused' in result)).length;
  }

  /** Takes what is known and pours nothing: fresh when that is all of it, else waiting, with what is lacking. */
  async look(): Promise<void> {
    if (this.state !== 'waiting') return;
    const turn = ++this.#turn;
    const isOver = (): boolean => turn !== this.#turn;
    this.#isLooking = true;
    this.lacking = null;
    await this.#setting();
    await this.#points(isOver);
    if (!isOver() && this.lacking === null && (await this.#ending(isOver))) this.#finish();
    if (isOver()) return;
    this.#isLooking = false;
    this.lacking ??= 0;
  }

  /** Computes what is not known yet; goes on where it was stopped. */
  async start(): Promise<void> {
    if (this.state === 'running') return;
    this.state = 'running';
    this.#isLooking = false;
    const turn = ++this.#turn;
    const isOver = (): boolean => turn !== this.#turn;
    await this.#setting();
    if (!isOver()) await this.#points(isOver);
    if (!isOver() && (await this.#ending(isOver))) this.#finish();
  }

  #finish(): void {
    this.done = 1;
    this.state = 'fresh';
  }

  /** What comes after the points; false when it was ended before it was done. */
  async #ending(isOver: () => boolean): Promise<boolean> {
    return (await this.#margins(isOver)) && !isOver() && (await this.#openings(isOver)) && !isOver();
  }

  stop(): void {
    if (this.state !== 'running') return;
    this.#turn++;
    this.state = 'stopped';
    this.#show(true);
  }

  /** Computes one point that was only taken from its neighbour. */
  async compute(point: number): Promise<void> {
    const at = pointAt(this.plan, valuesAt(this.grid, point));
    const result = 'refused' in at ? at : await this.#pool.result(at.plan, planHash(at.plan));
    this.#found.set(point, result);
    this.#show(true);
  }

  /** The setting itself comes before all other points: what is said of it then stands. */
  async #setting(): Promise<void> {
    const at = this.setPoint;
    if (at === null || this.setResult) return;
    const result = await this.#resultAt(
      Object.fromEntries(this.axes.map(({ setting }, index) => [setting, at[index]!])),
    );
    if (!result) return;
    this.setResult = result;
    this.setRegion = regionOf(result);
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
      let lacking = 0;
      await this.#pool.each(wave, isOver, async (point) => {
        const result = await this.#resultAt(valuesAt(this.grid, point));
        if (!result) {
          lacking++;
          return;
        }
        this.#found.set(point, result);
        regions.set(point, regionOf(result));
        this.done = (0.9 * regions.size) / Math.max(total, this.grid.count / 2);
        this.#show(false);
      });
      this.#show(true);
      if (isOver()) return;
      if (lacking > 0) {
        this.lacking = lacking;
        return;
      }
    }
  }

  async #margins(isOver: () => boolean): Promise<boolean> {
    const at = this.setPoint;
    if (at === null || this.#measured) return true;
    if (this.setRegion === null) return false;
    if (this.setRegion !== 'sound') return true;
    this.stage = 'Measuring the margins';
    const isBeyondMachine = beyondMachine(this.plan);
    const regionAt = this.#regionAt(isOver);
    this.#measured = await marginsOf({ axes: this.axes, at, regionAt, isBeyondMachine });
    return this.#measured !== null;
  }

  async #openings(isOver: () => boolean): Promise<boolean> {
    const hasSound =
      this.setRegion === 'sound' || [...this.#found.values()].some((one) => regionOf(one) === 'sound');
    if (hasSound || this.axes.length < 2 || this.tried) return true;
    this.stage = 'Trying changes that may open a window';
    const { plan, grid } = this;
    this.tried = await openingsOf({ plan, grid, results: this.#found, regionAt: this.#regionAt(isOver) });
    return this.tried !== null;
  }

  #regionAt(isOver: () => boolean): (values: SettingValues) => Promise<Region | null> {
    return async (values) => {
      const result = isOver() ? null : await this.#resultAt(values);
      return result && regionOf(result);
    };
  }

  /** Null when it would have to be poured, and nothing may be. */
  async #resultAt(values: SettingValues): Promise<PointResult | null> {
    const at = pointAt(this.plan, values);
    if ('refused' in at) return at;
    const hash = planHash(at.plan);
    return this.#isLooking ? this.#pool.known(hash) : this.#pool.result(at.plan, hash);
  }

  #show(now: boolean): void {
    const time = performance.now();
    if (!now && time - this.#lastShown < SHOW_EVERY) return;
    this.#lastShown = time;
    this.results = new Map(this.#found);
  }
}
