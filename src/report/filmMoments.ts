import type { PourRecord } from '$src/core/pour/record';
import { lastTime } from './moment';
import { dieLength } from './series';

const FRAMES = 4;

/** When the front first stands this share of the die past the mouth [s]; null when it never does. */
function frontPast(record: PourRecord, share: number): number | null {
  const index = record.series.front.findIndex((place) => place >= share * dieLength(record));
  return index < 0 ? null : record.series.time[index]!;
}

/**
 * Four moments that tell the pour [s]: front just in, front well on, front at the end, nearly full. What did not
 * happen, or falls on another moment, gives way to an even step through the rest of the pour.
 */
export function filmMoments(record: PourRecord): number[] {
  const { arrivalTime, filled90Time } = record.figures;
  const end = lastTime(record);
  const told = [frontPast(record, 0.15), frontPast(record, 0.6), arrivalTime, filled90Time];
  const apart = end / 100;
  const moments = told
    .filter((time) => time !== null)
    .sort((a, b) => a - b)
    .filter((time, index, all) => index === 0 || time - all[index - 1]! > apart);
  for (let step = FRAMES; moments.length < FRAMES && step > 0; step--) {
    const even = (end * step) / FRAMES;
    if (moments.every((time) => Math.abs(time - even) > apart)) moments.push(even);
  }
  return moments.sort((a, b) => a - b);
}
