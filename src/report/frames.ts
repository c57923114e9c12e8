import type { PourRecord } from '$src/core/pour/record';
import type { FrameMetal } from './drawing/film';
import { between } from './moment';

/** A picture of the pour between two kept frames. */
export interface Picture extends FrameMetal {
  /** [rad] */
  readonly inclination: number;
}

/**
 * A film thinner than this [m] is less than half a line at any scale the section is drawn at, and its level, worked
 * out cell by cell, would only draw a ladder of lines on a steep floor.
 */
const FILM = 2e-4;

/**
 * The picture at `time` [s], straight between frames where a mesh cell is wet in both; a cell that is wet in one only
 * shows the nearer frame.
 */
export function pictureAt({ frames }: PourRecord, time: number): Picture {
  const { data, stride } = frames.level;
  const { index, share } = between(frames.time, time);
  const { depth } = frames;
  const depthIn = (frame: number, cell: number): number =>
    depth.data[frame * depth.stride[0] + cell * depth.stride[1]]!;
  const levelIn = (frame: number, cell: number): number =>
    depthIn(frame, cell) < FILM ? Number.NaN : data[frame * stride[0] + cell * stride[1]]!;
  const after = share > 0 ? index + 1 : index;
  const reading = (valueIn: (frame: number, cell: number) => number) => (cell: number) => {
    const isWetInBoth = !Number.isNaN(levelIn(index, cell)) && !Number.isNaN(levelIn(after, cell));
    const [a, b] = [valueIn(index, cell), valueIn(after, cell)];
    if (isWetInBoth) return a + (b - a) * share;
    return share < 0.5 ? a : b;
  };
  const from = frames.inclination[index]!;
  const to = frames.inclination[after]!;
  return { inclination: from + (to - from) * share, levelOf: reading(levelIn), depthOf: reading(depthIn) };
}

/** Depth of the metal behind the front at `time` [m]: the last mean depth kept with the front's speed; null outside. */
export function depthBehindFront({ frontSpeeds }: PourRecord, time: number): number | null {
  const { time: times, depth } = frontSpeeds;
  if (times.length === 0 || time < times[0]! || time > times.at(-1)!) return null;
  return depth[between(times, time).index]!;
}
