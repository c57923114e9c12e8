import type { PourRecord } from '$src/core/pour/record';
import { indexAt, lastTime } from './moment';

/** What records that are played side by side have in common at any moment. */
export type StepBy = 'time' | 'inclination' | 'filled share';

/** Ends of the common scrubber, first shown at the left. */
export interface StepRange {
  readonly from: number;
  readonly to: number;
}

/** The range all pours share: time [s] and filled share [0 to 1] rise, inclination [rad] falls. */
export function stepRange(records: readonly PourRecord[], by: StepBy): StepRange {
  if (by === 'time') return { from: 0, to: Math.max(0, ...records.map(lastTime)) };
  if (by === 'filled share')
    return {
      from: 0,
      to: Math.max(0, ...records.map((record) => Math.max(0, ...record.series.filledShare))),
    };
  const all = records.flatMap(({ series }) => [series.inclination[0]!, series.inclination.at(-1)!]);
  return { from: Math.max(...all), to: Math.min(...all) };
}

/** First sample where the rising `value` reaches `wanted`, refined between samples; the last sample if none does. */
function firstReached(time: Float64Array, value: (index: number) => number, wanted: number): number {
  for (let index = 0; index < time.length; index++) {
    const here = value(index);
    if (here < wanted) continue;
    const before = index === 0 ? here : value(index - 1);
    if (index === 0 || here === before) return time[index]!;
    return time[index - 1]! + ((time[index]! - time[index - 1]!) * (wanted - before)) / (here - before);
  }
  return time.at(-1) ?? 0;
}

/** The time [s] in this pour that stands in step with the common value; held at the pour's own ends. */
export function timeInStep(record: PourRecord, by: StepBy, value: number): number {
  const { series } = record;
  if (by === 'time') return Math.min(lastTime(record), Math.max(0, value));
  if (by === 'inclination') return firstReached(series.time, (index) => -series.inclination[index]!, -value);
  return firstReached(series.time, (index) => series.filledShare[index]!, value);
}

/** The common value at a time of this pour: the inverse of `timeInStep`, used while playing. */
export function stepValue(record: PourRecord, by: StepBy, time: number): number {
  if (by === 'time') return time;
  const index = indexAt(record.series.time, time);
  return by === 'inclination' ? record.series.inclination[index]! : record.series.filledShare[index]!;
}
