import type { ScaleLinear } from 'd3';
import type { Box } from '$src/report/drawing/box';
import type { CriticalBand, Plot, ReferenceLine, Spot } from './chart';
import { dense, freerSide, hits, textWidth } from './labelRoom';

/** A chart's field and scales, and what is drawn in it [px]. */
export interface Field {
  readonly plot: Plot;
  readonly xScale: ScaleLinear<number, number>;
  readonly yScale: ScaleLinear<number, number>;
  readonly curves: readonly (readonly Spot[])[];
}

/** Words of a ruled line: where they are set, from which end, and the room they take. */
export interface RuledWords {
  readonly x: number;
  readonly y: number;
  readonly isRight: boolean;
  readonly box: Box;
}

/** Words of the critical limit, over or under its line at the end that the curves leave freer; a note has the line below. */
export function limitWords(
  { value, label, note, isBelow }: CriticalBand,
  { plot, yScale, curves }: Field,
): RuledWords {
  const limit = Math.max(plot.top, yScale(value));
  const width = Math.max(textWidth(label), textWidth(note ?? '')) + 14;
  const room = isBelow
    ? { width, top: limit + 2, bottom: limit + 18 }
    : { width, top: limit - (note ? 36 : 20), bottom: limit - 2 };
  const isRight = freerSide(curves, plot, room) === 'right';
  const left = isRight ? plot.right - width : plot.left;
  return {
    x: isRight ? plot.right - 6 : plot.left + 7,
    y: isBelow ? limit + 14 : limit - 7,
    isRight,
    box: { left, right: left + width, top: room.top, bottom: room.bottom },
  };
}

/** Words beside an upright line: at its head, or where the curves leave them freer further down. */
function uprightHeight(left: number, width: number, { plot, curves }: Field): number {
  const all = curves.map(dense);
  const heights = [
    plot.top + 10,
    plot.bottom - 14,
    ...[1, 2, 3].map((k) => plot.top + (k * (plot.bottom - plot.top)) / 4),
  ];
  const crossed = (y: number): number => {
    const box = { left, right: left + width, top: y - 11, bottom: y + 3 };
    return all.reduce((sum, curve) => sum + hits(box, curve), 0);
  };
  return heights.reduce((best, y) => (crossed(y) < crossed(best) ? y : best));
}

/** Words of a reference line: over a level one at its freer end, beside an upright one where no curve crosses them. */
export function referenceWords({ axis, value, label }: ReferenceLine, field: Field): RuledWords {
  const { plot, xScale, yScale, curves } = field;
  const size = textWidth(label);
  const y = axis === 'y' ? yScale(value) - 5 : uprightHeight(xScale(value) + 5, size, field);
  const room = { width: size + 7, top: y - 11, bottom: y + 3 };
  const isRight = axis === 'y' && freerSide(curves, plot, room, 'right') === 'right';
  const left = axis === 'x' ? xScale(value) + 5 : isRight ? plot.right - size : plot.left + 7;
  return {
    x: isRight ? plot.right : left,
    y,
    isRight,
    box: { left, right: left + size, top: y - 11, bottom: y + 3 },
  };
}

/** The ruled lines themselves, which a label must not lie on. */
export function ruledLines(
  critical: CriticalBand | null,
  references: readonly ReferenceLine[],
  field: Field,
): Spot[][] {
  const { plot, xScale, yScale } = field;
  const level = (value: number): Spot[] => [
    [plot.left, yScale(value)],
    [plot.right, yScale(value)],
  ];
  const upright = (value: number): Spot[] => [
    [xScale(value), plot.top],
    [xScale(value), plot.bottom],
  ];
  return [
    ...(critical ? [level(critical.value)] : []),
    ...references.map(({ axis, value }) => (axis === 'y' ? level(value) : upright(value))),
  ];
}
