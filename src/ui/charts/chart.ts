import type { RunLook } from './runLook';

/** One curve of a chart. x and y are in the units of the axes; a NaN breaks the line. */
export interface ChartSeries {
  readonly key: string;
  /** Said at the line itself, in the table and in the CSV. */
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly look: RunLook;
  /** Left out: no label at the line. */
  readonly isUnlabelled?: boolean;
  /** Left out: no markers along the line, whose points have marks of their own. */
  readonly isUnmarked?: boolean;
}

export interface ChartAxis {
  /** Quantity and unit, e.g. "front speed, m/s". */
  readonly label: string;
  /** First and last value shown; may fall. Left out: from the series. */
  readonly domain?: readonly [from: number, to: number];
  /** Tick and cursor text. */
  readonly format?: (value: number) => string;
  /** Values that get a tick instead of round ones. */
  readonly ticks?: readonly number[];
}

/** A limit with the field above it that is forbidden, and the width of doubt below. */
export interface CriticalBand {
  readonly value: number;
  /** Where doubt begins, below `value`. */
  readonly from: number;
  readonly label: string;
  readonly note?: string;
  /** The words stand under the line: another limit lies close above. */
  readonly isBelow?: boolean;
}

/** A level or upright reference line with a name, e.g. "die level" at 0°. */
export interface ReferenceLine {
  readonly axis: 'x' | 'y';
  readonly value: number;
  readonly label: string;
}

/** A numbered place on a chart. */
export interface ChartPin {
  readonly number: number;
  readonly size: 'slight' | 'marked' | 'heavy';
  readonly x: number;
  readonly y: number;
}

/** Where a chart draws: its field [px], and its scales from axis units to pixels. */
export interface ChartField {
  readonly plot: Plot;
  readonly xScale: (value: number) => number;
  readonly yScale: (value: number) => number;
}

export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Spot = readonly [x: number, y: number];

/** Lowest and highest finite value over all lists, widened a little when they are one. */
export function extent(lists: readonly (readonly number[])[]): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const values of lists)
    for (const value of values) {
      if (!Number.isFinite(value)) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  if (low > high) return [0, 1];
  return low === high ? [low - 0.5, high + 0.5] : [low, high];
}
