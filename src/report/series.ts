import type { FrontSpeeds, PourRecord } from '$src/core/pour/record';
import { toDegrees, toMillimetres } from '$src/core/units';

/** Points of a curve in shown units. A NaN breaks the line. */
export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

export type SpeedBy = 'place' | 'time' | 'inclination';
export type FrontBy = 'time' | 'inclination';

/** Level fill as drawn: front place by inclination (see core/level). */
export interface LevelFront {
  /** [rad] */
  readonly inclination: ArrayLike<number>;
  /** [m] from the mouth */
  readonly front: ArrayLike<number>;
}

const list = (values: ArrayLike<number>, convert: (value: number) => number = (value) => value): number[] =>
  Array.from(values, convert);

/** Length of the die along the axis [m], mouth to end. */
export function dieLength(record: PourRecord): number {
  const { floor, mouth } = record.plan.section;
  return floor.at(-1)!.x - mouth;
}

/** Front speed [m/s] by place [mm], time [s] or inclination [°]. */
export function frontSpeedCurve({ frontSpeeds }: { readonly frontSpeeds: FrontSpeeds }, by: SpeedBy): Curve {
  const x = {
    place: () => list(frontSpeeds.place, toMillimetres),
    time: () => list(frontSpeeds.time),
    inclination: () => list(frontSpeeds.inclination, toDegrees),
  }[by]();
  return { x, y: list(frontSpeeds.speed) };
}

const axisOf = (record: PourRecord, by: FrontBy): number[] =>
  by === 'time' ? list(record.series.time) : list(record.series.inclination, toDegrees);

/**
 * Front place [mm from the mouth] against time or inclination, from just before the mouth until it first touches
 * the end: what the front does afterwards is the return wave's affair.
 */
export function frontPlaceCurve(record: PourRecord, by: FrontBy): Curve {
  const x = axisOf(record, by);
  const end = dieLength(record);
  const arrived = record.series.front.findIndex((place) => isAtEnd(place, end));
  const last = arrived < 0 ? x.length : arrived + 1;
  const first = record.series.front.findIndex((place) => place > 0);
  if (first < 0) return { x: [], y: [] };
  const place = (index: number): number =>
    toMillimetres(Math.min(end, Math.max(0, record.series.front[index]!)));
  const from = Math.max(0, first - 1);
  // Metal that stands at the end from the start has run nowhere: one place is no curve.
  if (last - from < 2) return { x: [], y: [] };
  return {
    x: x.slice(from, last),
    y: Array.from({ length: Math.max(0, last - from) }, (_, index) => place(from + index)),
  };
}

/** A front this near the end of the die is there [m]. */
const AT_END = 1e-4;

/** The front stands at the end of the die, by its place from the mouth [m]. */
export const isAtEnd = (front: number, length: number): boolean => front >= length - AT_END;

/** Front place of the level fill [mm] by inclination [°], kept inside the die. */
export function levelFrontCurve(level: LevelFront, dieEnd: number): Curve {
  const inside = (place: number): number => toMillimetres(Math.min(dieEnd, Math.max(0, place)));
  const arrived = Array.from(level.front).findIndex((place) => isAtEnd(place, dieEnd));
  const count = arrived < 0 ? level.front.length : arrived + 1;
  return {
    x: list(level.inclination, toDegrees).slice(0, count),
    y: list(level.front, inside).slice(0, count),
  };
}

/** Filled share [%] against time or inclination. */
export function filledShareCurve(record: PourRecord, by: FrontBy): Curve {
  return { x: axisOf(record, by), y: list(record.series.filledShare, (share) => share * 100) };
}

/** Inclination [°] against time [s]. */
export const inclinationCurve = (record: PourRecord): Curve => ({
  x: axisOf(record, 'time'),
  y: axisOf(record, 'inclination'),
});

/** Tilt rate [°/s], positive while tipping, from central differences of the samples. */
export function rateCurve(record: PourRecord): Curve {
  const time = axisOf(record, 'time');
  const angle = axisOf(record, 'inclination');
  const last = time.length - 1;
  const rate = (index: number): number => {
    const [before, after] = [Math.max(0, index - 1), Math.min(last, index + 1)];
    return after > before ? -(angle[after]! - angle[before]!) / (time[after]! - time[before]!) : 0;
  };
  return { x: time, y: time.map((_, index) => rate(index)) };
}

/**
 * At most about `most` points: of every bucket the lowest and the highest are kept in order, so no peak is lost.
 * The first and last points always stay.
 */
export function thin(curve: Curve, most: number): Curve {
  const count = curve.x.length;
  if (count <= most) return curve;
  const buckets = Math.max(1, Math.floor((most - 2) / 2));
  const keep = new Set([0, count - 1]);
  for (let bucket = 0; bucket < buckets; bucket++) {
    const from = 1 + Math.floor((bucket * (count - 2)) / buckets);
    const to = 1 + Math.floor(((bucket + 1) * (count - 2)) / buckets);
    let [low, high] = [from, from];
    for (let index = from; index < to; index++) {
      if (curve.y[index]! < curve.y[low]!) low = index;
      if (curve.y[index]! > curve.y[high]!) high = index;
    }
    keep.add(low).add(high);
  }
  const kept = [...keep].sort((a, b) => a - b);
  return { x: kept.map((index) => curve.x[index]!), y: kept.map((index) => curve.y[index]!) };
}

/** Value of a curve at x by straight lines between points; NaN outside. x may rise or fall along the curve. */
export function valueAt(curve: Curve, at: number): number {
  const { x, y } = curve;
  for (let index = 1; index < x.length; index++) {
    const [a, b] = [x[index - 1]!, x[index]!];
    if ((at - a) * (at - b) > 0) continue;
    if (a === b) return y[index]!;
    return y[index - 1]! + ((y[index]! - y[index - 1]!) * (at - a)) / (b - a);
  }
  return x.length === 1 && x[0] === at ? y[0]! : Number.NaN;
}
