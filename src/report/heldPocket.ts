import type { PourRecord } from '$src/core/pour/record';
import { indexAt } from './moment';
import { openingAt } from './openingAt';

/** Where gas is shut in at the end of a pour [m from the mouth]. */
export interface HeldPocket {
  readonly from: number;
  readonly to: number;
}

/** As full as this a place lets no gas past. Ours; depths are kept in single precision. */
const SHUT = 0.99;

function isShut(record: PourRecord, frame: number, cell: number): boolean {
  const { data, stride } = record.frames.depth;
  return data[frame * stride[0] + cell * stride[1]]! >= SHUT * openingAt(record.outline, cell);
}

/** The largest stretch of the die that is not full behind one that is; null when there is none in the last picture. */
export function heldPocket(record: PourRecord): HeldPocket | null {
  const { x } = record.outline;
  const { mouth } = record.plan.section;
  const frame = record.frames.time.length - 1;
  let [largest, best, start, isBehindFull] = [0, null as HeldPocket | null, -1, false];
  for (let cell = indexAt(x, mouth); cell < x.length - 1; cell++) {
    if (isShut(record, frame, cell)) {
      [start, isBehindFull] = [-1, true];
      continue;
    }
    if (!isBehindFull) continue;
    if (start < 0) start = cell;
    const length = x[cell + 1]! - x[start]!;
    if (length > largest) [largest, best] = [length, { from: x[start]! - mouth, to: x[cell + 1]! - mouth }];
  }
  return best;
}

/** From when on metal covers a place along the axis without letting it go again [s]; null when it does not at the end. */
export function coveredFrom(record: PourRecord, place: number): number | null {
  const { x } = record.outline;
  const cell = Math.min(x.length - 2, indexAt(x, place - 1e-9));
  const { time } = record.frames;
  let frame = time.length;
  while (frame > 0 && isShut(record, frame - 1, cell)) frame--;
  return frame < time.length ? time[frame]! : null;
}
