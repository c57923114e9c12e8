import type { ChartPin } from './chart';
import type { RunLook } from './runLook';

/** One pour on the common strip of folds, in the unit of its axis. */
export interface FoldLane {
  readonly key: string;
  readonly name: string;
  readonly look: RunLook;
  /** Where the pour begins and ends. */
  readonly from: number;
  readonly to: number;
  /** Front between mouth and end. */
  readonly bar: { readonly from: number; readonly to: number; readonly label: string } | null;
  readonly pins: readonly (Omit<ChartPin, 'y'> & { readonly name: string })[];
  /** Where this pour stands now. */
  readonly cursor: number | null;
}

/** Places moved to the left so that none is nearer than `apart` [px] to the next; the last keeps its place. */
export function spreadLeft(places: readonly number[], apart: number): number[] {
  const order = places.map((_, index) => index).sort((a, b) => places[b]! - places[a]!);
  const spread = [...places];
  let limit = Number.POSITIVE_INFINITY;
  for (const index of order) {
    spread[index] = Math.min(places[index]!, limit);
    limit = spread[index]! - apart;
  }
  return spread;
}

/** Levels so that pins nearer than `apart` [px] do not lie on one another: 0 on the lane, 1 above it, and so on. */
export function pinLevels(places: readonly number[], apart: number): number[] {
  const lastAt: number[] = [];
  const order = places.map((_, index) => index).sort((a, b) => places[a]! - places[b]!);
  const levels = places.map(() => 0);
  for (const index of order) {
    let level = lastAt.findIndex((at) => places[index]! - at >= apart);
    if (level < 0) level = lastAt.length;
    lastAt[level] = places[index]!;
    levels[index] = level;
  }
  return levels;
}
