import type { PourRecord } from '$src/core/pour/record';

/** What holds at one instant of a pour. */
export interface Moment {
  /** [s] */
  readonly time: number;
  /** [rad] */
  readonly inclination: number;
  /** [m from the mouth] */
  readonly front: number;
  /** 0 to 1 */
  readonly filledShare: number;
  /** Speed of the front over its last window [m/s]; null before the first window is complete and after the last. */
  readonly frontSpeed: number | null;
  /** Middle of that window [m from the mouth]. */
  readonly frontSpeedPlace: number | null;
}

/** Index of the last entry not after `time`, by halving; 0 before the first. `times` rises. */
export function indexAt(times: ArrayLike<number>, time: number): number {
  let [low, high] = [0, times.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Where `time` lies between two entries: index and the share of the way to the next, 0 to 1. */
export function between(times: ArrayLike<number>, time: number): { index: number; share: number } {
  const index = indexAt(times, time);
  const next = times[index + 1];
  if (next === undefined) return { index, share: 0 };
  const share = (time - times[index]!) / (next - times[index]!);
  return { index, share: Math.min(1, Math.max(0, share)) };
}

function interpolate(values: ArrayLike<number>, index: number, share: number): number {
  const here = values[index]!;
  return share === 0 ? here : here + (values[index + 1]! - here) * share;
}

/** When the record ends [s]. */
export const lastTime = (record: PourRecord): number => record.series.time.at(-1) ?? 0;

/** The pour at `time` [s], held at its ends. */
export function momentAt(record: PourRecord, time: number): Moment {
  const { series } = record;
  const held = Math.min(lastTime(record), Math.max(0, time));
  const { index, share } = between(series.time, held);
  return {
    time: held,
    inclination: interpolate(series.inclination, index, share),
    front: interpolate(series.front, index, share),
    filledShare: interpolate(series.filledShare, index, share),
    ...frontSpeedAt(record, held),
  };
}

function frontSpeedAt(
  { frontSpeeds }: PourRecord,
  time: number,
): Pick<Moment, 'frontSpeed' | 'frontSpeedPlace'> {
  const { time: times, speed, place } = frontSpeeds;
  if (times.length === 0 || time < times[0]! || time > times.at(-1)!)
    return { frontSpeed: null, frontSpeedPlace: null };
  const { index, share } = between(times, time);
  return { frontSpeed: interpolate(speed, index, share), frontSpeedPlace: interpolate(place, index, share) };
}
