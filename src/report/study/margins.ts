import { edgeBetween } from '$src/core/elementary/edgeBetween';
import { axisValue } from './grid';
import { planAt, type SettingValues } from './planAt';
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
  /** What the pour nearest past the limit comes to; null when nothing does. */
  readonly meets: Region | null;
  /** How the map's first point past the limit fails, where that is another way. */
  readonly mapMeets?: Region;
  /** The limit is what the machine can do. */
  readonly isMachines?: boolean;
}

export interface MarginTask {
  readonly axes: readonly StudyAxis[];
  /** The set point, one value for each axis; sound. */
  readonly at: readonly number[];
  /** Computes a pour, or knows it already. Null ends the search: stopped. */
  readonly regionAt: (values: SettingValues) => Promise<Region | null>;
  /** Whether the machine cannot turn so; known without a pour. */
  readonly isBeyondMachine?: (values: SettingValues) => boolean;
}

/** An edge is pinned down to this share of the step between two points of the study. */
const FINENESS = 1 / 8;
/** How far past the end of a range it is asked whether the machine could go on, in steps. */
const PAST_END = 1e-3;
/** The machine's limit needs no pour: it is found to so much of a step. */
const MACHINE_FINENESS = 1e-6;

const sound = (region: Region): boolean => region === 'sound';

/** Whether the machine cannot turn the pour of that plan with such settings. */
export const beyondMachine =
  (plan: Parameters<typeof planAt>[0]) =>
  (values: SettingValues): boolean => {
    const at = planAt(plan, values);
    return 'refused' in at && at.refused.by === 'machine';
  };

/**
 * The margin from the set point along each axis, both ways, by running pours on that very line: outwards over the
 * values of the study to the first that is not sound, then halving the last step. A set point that lies on a row of the
 * map so meets the very pours of that row. Null when stopped.
 */
export async function marginsOf(task: MarginTask): Promise<Margin[] | null> {
  const ways = task.axes.flatMap((_, axis) => ([-1, 1] as const).map((direction) => ({ axis, direction })));
  const margins = await Promise.all(ways.map(({ axis, direction }) => marginAlong(task, axis, direction)));
  return margins.every((margin) => margin !== null) ? margins : null;
}

/** Values of the study past that one, the nearest first. */
function valuesPast(axis: StudyAxis, from: number, direction: -1 | 1): number[] {
  const values = Array.from({ length: axis.points }, (_, index) => axisValue(axis, index));
  return values
    .filter((value) => direction * (value - from) > Math.abs(axis.to - axis.from) * 1e-9)
    .toSorted((a, b) => direction * (a - b));
}

async function marginAlong(task: MarginTask, axis: number, direction: -1 | 1): Promise<Margin | null> {
  const { from, to, points, setting } = task.axes[axis]!;
  const start = task.at[axis]!;
  const step = Math.abs(to - from) / Math.max(1, points - 1);
  const set = Object.fromEntries(task.axes.map((one, index) => [one.setting, task.at[index]!]));
  const look = (value: number) => task.regionAt({ ...set, [setting]: value });
  const isBeyond = (value: number) => task.isBeyondMachine?.({ ...set, [setting]: value }) ?? false;

  let inside = start;
  let outside: number | null = null;
  let meets: Region | null = null;
  for (const next of valuesPast(task.axes[axis]!, start, direction)) {
    const region = await look(next);
    if (region === null) return null;
    if (!sound(region)) {
      [outside, meets] = [next, region];
      break;
    }
    inside = next;
  }
  if (outside === null) {
    const isMachines = isBeyond(inside + direction * step * PAST_END);
    return { axis, direction, limit: inside, distance: null, meets: null, ...(isMachines && { isMachines }) };
  }
  if (isBeyond(outside)) {
    const last = edgeBetween((value) => !isBeyond(value), inside, outside, step * MACHINE_FINENESS);
    const region = await look(last);
    if (region === null) return null;
    if (sound(region))
      return { axis, direction, limit: last, distance: Math.abs(last - start), meets, isMachines: true };
    [outside, meets] = [last, region];
  }
  while (Math.abs(outside - inside) > step * FINENESS) {
    const middle: number = (inside + outside) / 2;
    const region = await look(middle);
    if (region === null) return null;
    if (sound(region)) inside = middle;
    else [outside, meets] = [middle, region];
  }
  return { axis, direction, limit: inside, distance: Math.abs(inside - start), meets };
}
