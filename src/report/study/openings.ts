import type { PourPlan } from '$src/core/pour/plan';
import { fromMillimetres } from '$src/core/units';
import { roundedTransfer } from '../coatChoice';
import { type Grid, valuesAt } from './grid';
import type { SettingValues } from './planAt';
import { isPoured, type PointResult, type Region, regionOf } from './region';
import { settingNamed } from './settings';

/** A change of the die or the charge that might open a window, in terms of one setting. */
export interface Change {
  readonly setting: string;
  readonly value: number;
}

/** A change that was tried, with the first sound point found; null when none of the points tried was sound. */
export interface TriedChange extends Change {
  readonly soundAt: SettingValues | null;
  /** Why nothing can be said of the change: no point tried was a pour to judge. Null when one was. */
  readonly unjudged: Region | null;
}

type Step = readonly [setting: string, next: (now: number) => number];

/** Kelvins; one band of a burner or a coat. */
const DIE_STEP = 50;

/** From what a founder changes with a file to what takes a new die. */
const STEPS: readonly Step[] = [
  ['charge.mass', (now) => now * 1.05],
  ['charge.mass', (now) => now * 1.1],
  ['charge.mass', (now) => now * 0.95],
  ['heat.die', (now) => now + DIE_STEP],
  ['heat.die', (now) => now + 2 * DIE_STEP],
  ['heat.transfer', (now) => roundedTransfer(now / 2)],
  ['basin.depth', () => 0],
  ['basin.depth', (now) => now + fromMillimetres(10)],
  ['basin.length', (now) => now * 0.9],
  ['basin.length', (now) => now * 0.8],
  ['basin.length', (now) => now * 1.1],
  ['basin.length', (now) => now * 1.25],
];

/** The changes worth trying for this pour; what the study varies itself is left alone. */
export function changesFor(plan: PourPlan, varied: readonly string[]): Change[] {
  return STEPS.flatMap(([id, next]) => {
    const now = settingNamed(plan, id)?.read(plan) ?? null;
    if (now === null || varied.includes(id)) return [];
    const value = next(now);
    return Math.abs(value - now) > 1e-9 ? [{ setting: id, value }] : [];
  });
}

/** Points tried for each change. */
const TRIED = 6;

/** The points of a study that came closest to sound, best first: computed, filled if any are, least folded. */
export function closestPoints(results: ReadonlyMap<number, PointResult>): number[] {
  const scored = [...results].flatMap(([point, result]) =>
    'figures' in result && isPoured(regionOf(result))
      ? [{ point, unfilled: result.figures.filledTime === null ? 1 : 0, score: result.figures.foldScore }]
      : [],
  );
  const ordered = scored.toSorted(
    (a, b) => a.unfilled - b.unfilled || a.score - b.score || a.point - b.point,
  );
  return ordered.slice(0, TRIED).map(({ point }) => point);
}

export interface OpeningTask {
  readonly plan: PourPlan;
  readonly grid: Grid;
  readonly results: ReadonlyMap<number, PointResult>;
  /** Null ends the search: stopped. */
  readonly regionAt: (values: SettingValues) => Promise<Region | null>;
  readonly onTried?: (tried: TriedChange) => void;
}

/** Tries one change after another at the points that came closest; at most six pours for each of a dozen changes. */
export async function openingsOf(task: OpeningTask): Promise<TriedChange[] | null> {
  const points = closestPoints(task.results).map((point) => valuesAt(task.grid, point));
  const changes = changesFor(
    task.plan,
    task.grid.axes.map(({ setting }) => setting),
  );
  const tried: TriedChange[] = [];
  for (const change of changes) {
    let soundAt: SettingValues | null = null;
    const regions: Region[] = [];
    for (const values of points) {
      const region = await task.regionAt({ ...values, [change.setting]: change.value });
      if (region === null) return null;
      regions.push(region);
      if (region === 'sound') {
        soundAt = values;
        break;
      }
    }
    tried.push({ ...change, soundAt, unjudged: regions.some(isPoured) ? null : (regions[0] ?? null) });
    task.onTried?.(tried.at(-1)!);
  }
  return tried;
}
