import type { Spot } from './view';

/** Where the figure of an upright measure stands: which way from its line, and at what height [px]. */
export interface GapFigure {
  readonly side: 'left' | 'right';
  readonly y: number;
}

const CHARACTER = 6.8;
const OFF = 6;
/** A handle is this large, with a little air round it [px]. */
const AIR = 9;
const HEIGHTS = [0.5, 0.35, 0.65, 0.22, 0.78];

/** A place for the figure of an upright line at `x` beside it, where it lies under none of the spots; else under the fewest. */
export function gapFigure(
  x: number,
  span: { readonly from: number; readonly to: number },
  figure: string,
  spots: readonly Spot[],
): GapFigure {
  const width = figure.length * CHARACTER;
  const places = HEIGHTS.flatMap((share) =>
    (['right', 'left'] as const).map((side) => ({ side, y: span.from + (span.to - span.from) * share })),
  );
  const covered = ({ side, y }: GapFigure): number => {
    const left = side === 'right' ? x + OFF : x - OFF - width;
    return spots.filter(
      (spot) => spot.x > left - AIR && spot.x < left + width + AIR && Math.abs(spot.y - y) < AIR + 7,
    ).length;
  };
  return places.reduce((best, place) => (covered(place) < covered(best) ? place : best));
}
