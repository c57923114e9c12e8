import type { PourRecord } from '$src/core/pour/record';
import { lastTime } from './moment';
import { type StepBy, type StepRange, stepRange, stepValue } from './step';

/** What is left free behind the last that happened, and how much may be left out before it is worth it; shares of the axis. */
const AIR = 0.06;
const WORTH = 0.9;

/**
 * The part of the common axis in which the pours fold and fill: from the first start to a little after the last fold or
 * full die, of a pour that does not fill its die, to its end. The whole range where hardly anything would be left out.
 */
export function foldSpan(records: readonly PourRecord[], by: StepBy): StepRange {
  const all = stepRange(records, by);
  const way = Math.sign(all.to - all.from) || 1;
  const last = Math.max(...records.map((record) => way * stepValue(record, by, lastEvent(record))));
  const reached = way * last;
  const end = reached + (reached - all.from) * AIR;
  const share = (end - all.from) / (all.to - all.from);
  return share < WORTH ? { from: all.from, to: end } : all;
}

/** When the last fold came or the die was full, whichever is later; the end of a pour that does not fill its die [s]. */
function lastEvent(record: PourRecord): number {
  const { filledTime } = record.figures;
  return filledTime === null
    ? lastTime(record)
    : Math.max(filledTime, ...record.folds.map(({ time }) => time));
}
