import type { Fold, PourRecord } from '$src/core/pour/record';
import { indexAt } from '../moment';
import { openingAt } from '../openingAt';

/** The metal where and when a fold was, as computed: means over the last stretch before its place. */
export interface MetalThere {
  /** Normal to the axis [m]. */
  readonly depth: number;
  /** Along the floor, either way [m/s]. */
  readonly speed: number;
  /** Depth over the height of the section, 0 to 1. */
  readonly fullness: number;
}

/** Looked at before the place of the fold, where the metal comes from [m]; as for the depth behind a front. */
const STRETCH = 20e-3;
/** Thinner metal is none [m]. */
const FILM = 2e-4;

/** Null where no metal is kept in the pictures of that moment. */
export function metalThere(
  { frames, outline, plan }: PourRecord,
  { time, place }: Pick<Fold, 'time' | 'place'>,
): MetalThere | null {
  const frame = indexAt(frames.time, time);
  const { x } = outline;
  const to = plan.section.mouth + place;
  const cells = Array.from({ length: x.length - 1 }, (_, cell) => cell).filter(
    (cell) => x[cell]! < to + 1e-9 && x[cell + 1]! > to - STRETCH,
  );
  const valueIn = ({ data, stride }: PourRecord['frames']['depth'], cell: number): number =>
    data[frame * stride[0] + cell * stride[1]]!;
  const wet = cells.filter((cell) => valueIn(frames.depth, cell) > FILM);
  if (wet.length === 0) return null;
  const mean = (reading: (cell: number) => number): number =>
    wet.reduce((sum, cell) => sum + reading(cell), 0) / wet.length;
  const depth = mean((cell) => valueIn(frames.depth, cell));
  const height = mean((cell) => openingAt(outline, cell));
  return {
    depth,
    speed: Math.abs(mean((cell) => valueIn(frames.speed, cell))),
    fullness: Math.min(1, depth / height),
  };
}
