import type { PourRecord } from '$src/core/pour/record';
import { between, lastTime } from './moment';

/** One hue whose lightness goes one way with depth. */
export type Ramp = readonly (readonly [red: number, green: number, blue: number])[];

/** Paper to dark brown. */
export const LIGHT_RAMP: Ramp = [
  [249, 236, 214],
  [243, 189, 116],
  [209, 139, 55],
  [150, 82, 20],
  [74, 37, 8],
];
/** Dark to pale. */
export const DARK_RAMP: Ramp = [
  [52, 31, 14],
  [112, 62, 17],
  [184, 103, 27],
  [232, 169, 92],
  [255, 236, 204],
];

/** Colour at a share 0 to 1 of a ramp. */
export function rampColour(ramp: Ramp, share: number): [number, number, number] {
  const along = Math.min(1, Math.max(0, share)) * (ramp.length - 1);
  const index = Math.min(ramp.length - 2, Math.floor(along));
  const [from, to] = [ramp[index]!, ramp[index + 1]!];
  const mix = (channel: 0 | 1 | 2): number =>
    Math.round(from[channel] + (to[channel] - from[channel]) * (along - index));
  return [mix(0), mix(1), mix(2)];
}

/** A picture of depth: place from mouth (left) to die end, time downward. Row-major RGBA, dry pixels clear. */
export interface DepthPixels {
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
  readonly columns: number;
  readonly rows: number;
  /** Depth the ramp's end stands for [m]. */
  readonly deepest: number;
}

/** Depth below which a pixel counts as dry [m], as in the front's own definition (docs/conventions.md). */
const DRY = 0.001;

/** Mesh cell under each column: columns are even in place, mesh cells need not be. */
function cellsUnder(record: PourRecord, columns: number): Int32Array {
  const { x } = record.outline;
  const { mouth } = record.plan.section;
  const end = x.at(-1)!;
  return Int32Array.from({ length: columns }, (_, column) => {
    const place = mouth + ((column + 0.5) / columns) * (end - mouth);
    return Math.min(x.length - 2, between(x, place).index);
  });
}

/** Greatest depth past the mouth in any frame [m]. */
export function deepestInDie(record: PourRecord): number {
  const { data, shape, stride } = record.frames.depth;
  const first = record.outline.x.findIndex((x) => x >= record.plan.section.mouth);
  let deepest = 0;
  for (let i = 0; i < shape[0]; i++)
    for (let j = Math.max(0, first); j < shape[1]; j++)
      deepest = Math.max(deepest, data[i * stride[0] + j * stride[1]]!);
  return deepest;
}

/**
 * Times [s] worth mapping: from just before first flow, past the arrival by half as long again as the front was on its
 * way, and no further than the fill.
 */
export function depthWindow(record: PourRecord): { from: number; to: number } {
  const { firstFlowTime, arrivalTime, filledTime } = record.figures;
  const first = firstFlowTime ?? 0;
  const last = Math.min(lastTime(record), (filledTime ?? Number.POSITIVE_INFINITY) + 0.2);
  const told = arrivalTime === null ? last : arrivalTime + Math.max(0.5, 1.5 * (arrivalTime - first));
  return {
    from: Math.max(0, Math.floor((first - 0.05) * 10) / 10),
    to: Math.min(last, Math.ceil(told * 10) / 10),
  };
}

/** Depth by place and time between two times [s] as pixels. `deepest` lets pours share one scale. */
export function depthPixels(
  record: PourRecord,
  size: { readonly columns: number; readonly rows: number },
  window: { readonly from: number; readonly to: number },
  ramp: Ramp,
  deepest = deepestInDie(record),
): DepthPixels {
  const { columns, rows } = size;
  const { depth, time } = record.frames;
  const cells = cellsUnder(record, columns);
  const pixels = new Uint8ClampedArray(columns * rows * 4);
  const colours = Array.from({ length: 256 }, (_, step) => rampColour(ramp, step / 255));
  for (let row = 0; row < rows; row++) {
    const { index, share } = between(time, window.from + ((row + 0.5) / rows) * (window.to - window.from));
    const frame = share > 0.5 ? index + 1 : index;
    for (let column = 0; column < columns; column++) {
      const value = depth.data[frame * depth.stride[0] + cells[column]! * depth.stride[1]]!;
      if (!(value > DRY)) continue;
      const [red, green, blue] = colours[Math.min(255, Math.round((value / deepest) * 255))]!;
      pixels.set([red, green, blue, 255], (row * columns + column) * 4);
    }
  }
  return { pixels, columns, rows, deepest };
}
