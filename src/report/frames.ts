import type { PourRecord } from '$src/core/pour/record';
import { between } from './moment';

/** A picture of the pour between two kept frames. */
export interface Picture {
  /** [rad] */
  readonly inclination: number;
  /** Lab elevation of the metal surface in a mesh cell [m], NaN where dry. */
  levelOf(cell: number): number;
}

/**
 * The picture at `time` [s], straight between frames where a mesh cell is wet in both; a cell that is wet in one only
 * shows the nearer frame.
 */
export function pictureAt({ frames }: PourRecord, time: number): Picture {
  const { data, stride } = frames.level;
  const { index, share } = between(frames.time, time);
  const here = index * stride[0];
  const next = share > 0 ? here + stride[0] : here;
  const levelOf = (cell: number): number => {
    const a = data[here + cell * stride[1]]!;
    const b = data[next + cell * stride[1]]!;
    if (!Number.isNaN(a) && !Number.isNaN(b)) return a + (b - a) * share;
    return share < 0.5 ? a : b;
  };
  const from = frames.inclination[index]!;
  const to = frames.inclination[share > 0 ? index + 1 : index]!;
  return { inclination: from + (to - from) * share, levelOf };
}

/** Depth of the metal behind the front at `time` [m]: the last mean depth kept with the front's speed; null outside. */
export function depthBehindFront({ frontSpeeds }: PourRecord, time: number): number | null {
  const { time: times, depth } = frontSpeeds;
  if (times.length === 0 || time < times[0]! || time > times.at(-1)!) return null;
  return depth[between(times, time).index]!;
}
