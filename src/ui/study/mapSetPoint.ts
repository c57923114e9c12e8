import type { PageUnits } from '$src/core/units';
import type { Box } from '$src/report/drawing/box';
import type { Margin } from '$src/report/study/margins';
import { shownDistance } from '$src/report/study/quantities';
import type { Region } from '$src/report/study/region';
import type { NamedAxis } from '$src/report/study/studyFile';
import { textWidth } from '../charts/labelRoom';
import type { MapPlot } from './mapPlot';

/** A point of the map [px]. */
export interface MapSpot {
  readonly x: number;
  readonly y: number;
}

/** A margin drawn as a dimension line from the set point to the edge it is measured to, with its words. */
export interface MarginLine {
  readonly isAcross: boolean;
  readonly from: number;
  readonly to: number;
  readonly sign: number;
  readonly text: string;
  readonly textAt: MapSpot;
  readonly anchor: 'start' | 'middle' | 'end';
}

const RING = 11;
const LINE = 15;

const SHORT: Readonly<Record<Region, string>> = {
  'folds film': 'folding',
  'near the limit': 'doubt',
  laps: 'lapping',
  misrun: 'misrun',
  'folds film and laps': 'folding',
  'folds film and spills': 'folding',
  'folds film, laps and spills': 'folding',
  'gas held': 'gas held',
  'not filled': 'not full',
  'spills metal': 'spilling',
  'outside the machine': 'the machine',
  'no such pour': 'no pour',
  'not computed': 'no result',
  'in the die while ladling': 'ladling',
  sound: 'sound',
};

/** The set point on the map; null when it lies outside. */
export function setSpot(plot: MapPlot, at: readonly number[] | null): MapSpot | null {
  if (!at) return null;
  const [x, y] = [plot.x(at[0]!), plot.y(at[1]!)];
  const isInside = x >= plot.left - 1 && x <= plot.right + 1 && y >= plot.top - 1 && y <= plot.bottom + 1;
  return isInside ? { x, y } : null;
}

/** Margins that end at an edge and are long enough to be drawn. */
export function marginLines(
  plot: MapPlot,
  set: MapSpot,
  margins: readonly Margin[],
  axes: readonly NamedAxis[],
  units: PageUnits,
): readonly MarginLine[] {
  return margins.flatMap(({ axis, distance, meets, limit }) => {
    if (distance === null || meets === null) return [];
    const isAcross = axis === 0;
    const end = isAcross ? plot.x(limit) : plot.y(limit);
    const start = isAcross ? set.x : set.y;
    const sign = Math.sign(end - start);
    if (Math.abs(end - start) < RING + 8) return [];
    const text = `${shownDistance(distance, axes[axis]!.quantity, units)} to ${SHORT[meets]}`;
    const from = start + sign * RING;
    return [{ isAcross, from, to: end, sign, text, ...textPlace(plot, set, isAcross, from, end, text) }];
  });
}

function textPlace(
  plot: MapPlot,
  set: MapSpot,
  isAcross: boolean,
  from: number,
  end: number,
  text: string,
): Pick<MarginLine, 'textAt' | 'anchor'> {
  const middle = (from + end) / 2;
  const wide = textWidth(text);
  if (!isAcross) {
    const isRight = set.x + 7 + wide <= plot.right;
    return { textAt: { x: set.x + (isRight ? 7 : -7), y: middle + 4 }, anchor: isRight ? 'start' : 'end' };
  }
  // At the upper edge the words go below their line: over it stands the name of the axis.
  const y = isUnderEdge(set, plot) ? set.y + LINE + 2 : set.y - 9;
  if (Math.abs(end - from) > wide) return { textAt: { x: middle, y }, anchor: 'middle' };
  return { textAt: { x: from, y }, anchor: end < from ? 'end' : 'start' };
}

const isUnderEdge = ({ y }: MapSpot, { top }: Pick<MapPlot, 'top'>): boolean => y - 9 - LINE < top;

function textBox({ textAt, anchor, text }: MarginLine): Box {
  const wide = textWidth(text);
  const left = textAt.x - { start: 0, middle: wide / 2, end: wide }[anchor];
  return { left, right: left + wide, top: textAt.y - LINE, bottom: textAt.y + 3 };
}

/** What the mark of the setting is called: on a map from before the last change it is no longer what is set. */
export const setWords = (isOld: boolean): string => (isOld ? 'set before' : 'set now');

/** The words of the mark take at most this [px]. */
const NAME_WIDTH = 72;

/** Where the words of the mark stand: left of it, or right of it where they would lie on the axis [px]. */
export function setNameAt(set: MapSpot, plot: Pick<MapPlot, 'left' | 'top'>) {
  const { x } = set;
  // Clear of the words of the dimension lines, which lie there at the upper edge.
  const y = set.y + (isUnderEdge(set, plot) ? LINE + 3 : 0);
  const isRight = x - 8 - NAME_WIDTH < plot.left;
  const from = isRight ? x + 8 : x - 8 - NAME_WIDTH;
  const box: Box = { left: from, right: from + NAME_WIDTH, top: y + 8, bottom: y + 26 };
  return { x: isRight ? x + 12 : x - 12, y: y + 22, isRight, box };
}

/** What names of regions must keep clear of: the cross, its words, the dimension lines and theirs [px]. */
export function setPointBoxes(
  set: MapSpot,
  lines: readonly MarginLine[],
  plot: Pick<MapPlot, 'left' | 'top'>,
): readonly Box[] {
  const own: Box = { left: set.x - 14, right: set.x + 14, top: set.y - 14, bottom: set.y + 14 };
  const drawn = lines.map(({ isAcross, from, to }): Box => {
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    return isAcross
      ? { left: low, right: high, top: set.y - 3, bottom: set.y + 3 }
      : { left: set.x - 3, right: set.x + 3, top: low, bottom: high };
  });
  return [own, setNameAt(set, plot).box, ...drawn, ...lines.map(textBox)];
}
