import type { SettingValues } from './planAt';
import type { Region } from './region';
import type { StudyAxis } from './study';

/** How far a setting may stray one way along one axis before the pour is no longer sound. */
export interface Margin {
  readonly axis: number;
  readonly direction: -1 | 1;
  /** Last value found sound [unit of the axis]. */
  readonly limit: number;
  /** From the set point to the limit; null when it is sound up to the end of the range. */
  readonly distance: number | null;
  /** What lies past the limit; null when nothing does. */
  readonly meets: Region | null;
}

export interface MarginTask {
  readonly axes: readonly StudyAxis[];
  /** The set point, one value for each axis; sound. */
  readonly at: readonly number[];
  /** Computes a pour, or knows it already. Null ends the search: stopped. */
  readonly regionAt: (values: SettingValues) => Promise<Region | null>;
}

/** An edge is pinned down to this share of the step between two points of the study. */
const FINENESS = 1 / 8;

const sound = (region: Region): boolean => region === 'sound';

/**
 * The margin from the set point along each axis, both ways, by running pours on that very line: outwards step by
 * step to the first that is not sound, then halving the last step. Steps are those of the study. Null when stopped.
 */
export async function marginsOf(task: MarginTask): Promise<Margin[] | null> {
  const ways = task.axes.flatMap((_, axis) => ([-1, 1] as const).map((direction) => ({ axis, direction })));
  const margins = await Promise.all(ways.map(({ axis, direction }) => marginAlong(task, axis, direction)));
  return margins.every((margin) => margin !== null) ? margins : null;
}

async function marginAlong(task: MarginTask, axis: number, direction: -1 | 1): Promise<Margin | null> {
  const { from, to, points, setting } = task.axes[axis]!;
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const end = direction < 0 ? Math.min(low, task.at[axis]!) : Math.max(high, task.at[axis]!);
  const step = (high - low) / Math.max(1, points - 1);
  const set = Object.fromEntries(task.axes.map((one, index) => [one.setting, task.at[index]!]));
  const look = (value: number) => task.regionAt({ ...set, [setting]: value });

  let inside = task.at[axis]!;
  let outside: number | null = null;
  let meets: Region | null = null;
  while (outside === null && inside !== end) {
    const next = direction < 0 ? Math.max(end, inside - step) : Math.min(end, inside + step);
    const region = await look(next);
    if (region === null) return null;
    if (sound(region)) inside = next;
    else [outside, meets] = [next, region];
  }
  while (outside !== null && Math.abs(outside - inside) > step * FINENESS) {
    const middle: number = (inside + outside) / 2;
    const region = await look(middle);
    if (region === null) return null;
    if (sound(region)) inside = middle;
    else [outside, meets] = [middle, region];
  }
  const distance = outside === null ? null : Math.abs(inside - task.at[axis]!);
  return { axis, direction, limit: inside, distance, meets };
}
