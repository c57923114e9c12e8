import { axisIndex, axisValue } from './grid';
import type { MapAnswer } from './mapAnswer';
import type { Margin } from './margins';
import { isPoured, type Region, spillLeftOut } from './region';
import type { NamedAxis } from './studyFile';

/** A point of the map on the row or column nearest to the set point, computed or coloured. */
export interface LinePoint {
  readonly value: number;
  readonly region: Region;
}

/** What lies past the first point that is not sound: nothing sound any more, sound again once, or both in turn. */
export type PastEdge = 'nothing sound' | 'sound again' | 'alternates';

const isSound = ({ region }: LinePoint): boolean => region === 'sound';

/** Points of a study from the set point outwards one way, of a map on the row or column nearest to it; the point of the setting itself is left out. */
export function lineFrom(
  axes: readonly NamedAxis[],
  { grid, regions }: MapAnswer,
  axis: number,
  direction: -1 | 1,
): readonly LinePoint[] {
  const along = axes[axis];
  const line = lineOf(axes[1 - axis]);
  if (!along || along.setPoint === null || line === null) return [];
  const own = along.setPoint;
  const nearby = (Math.abs(along.to - along.from) / Math.max(1, along.points - 1)) * 1e-6;
  return Array.from({ length: along.points }, (_, index) => {
    const point = axis === 0 ? index + line * grid.columns : line + index * grid.columns;
    return { value: axisValue(along, index), region: regions[point]! };
  })
    .filter(({ value }) => direction * (value - own) > nearby)
    .toSorted((a, b) => direction * (a.value - b.value));
}

/** Row or column of the set point on the other axis; the only one of a curve. Null where the map does not reach. */
function lineOf(other: NamedAxis | undefined): number | null {
  if (!other) return 0;
  if (other.setPoint === null) return null;
  const line = Math.round(axisIndex(other, other.setPoint));
  return line < 0 || line >= other.points ? null : line;
}

/**
 * Margins that keep to what the map shows. Those found by pours on the line itself can lie beyond a point that was
 * computed since, or beside the line on its nearest row: a range that is told ends before it.
 */
export function marginsWithin(
  margins: readonly Margin[] | null,
  axes: readonly NamedAxis[],
  answer: MapAnswer | null,
): readonly Margin[] | null {
  if (!margins || !answer) return margins;
  return margins.map((margin) => namedByMap(endedByMap(margin, axes, answer), axes, answer));
}

function endedByMap(margin: Margin, axes: readonly NamedAxis[], answer: MapAnswer): Margin {
  const { axis, direction, limit } = margin;
  const set = axes[axis]!.setPoint!;
  let last = set;
  for (const point of lineFrom(axes, answer, axis, direction)) {
    if (direction * (point.value - limit) > 0) return margin;
    if (!isSound(point))
      return { axis, direction, limit: last, distance: Math.abs(last - set), meets: point.region };
    last = point.value;
  }
  return margin;
}

/** Where the pour nearest past a limit and the map's own first point past it fail in two ways, both are named. */
function namedByMap(margin: Margin, axes: readonly NamedAxis[], answer: MapAnswer): Margin {
  const { axis, direction, limit, meets } = margin;
  const { from, to, points } = axes[axis]!;
  const step = Math.abs(to - from) / Math.max(1, points - 1);
  const past = lineFrom(axes, answer, axis, direction).find(
    (point) => direction * (point.value - limit) > 0 && !isSound(point),
  );
  if (!past || Math.abs(past.value - limit) > 1.01 * step || past.region === meets) return margin;
  // What spills besides folds all the same.
  if (meets !== null && spillLeftOut(past.region) === spillLeftOut(meets)) return margin;
  const isFault = (region: Region | null): boolean =>
    region !== null && isPoured(region) && region !== 'near the limit';
  return isFault(meets) && isFault(past.region) ? { ...margin, mapMeets: past.region } : margin;
}

/** What the row of the set point holds past the end of its sound range, one way. */
export function pastEdge(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  { axis, direction }: Pick<Margin, 'axis' | 'direction'>,
): PastEdge {
  const line = lineFrom(axes, answer, axis, direction);
  return soundRunsPast(line) === 0
    ? 'nothing sound'
    : soundRunsPast(line) === 1
      ? 'sound again'
      : 'alternates';
}

/** Stretches of sound points past the first that is not. */
function soundRunsPast(line: readonly LinePoint[]): number {
  const first = line.findIndex((point) => !isSound(point));
  if (first < 0) return 0;
  return line.slice(first).filter((point, k, rest) => isSound(point) && k > 0 && !isSound(rest[k - 1]!))
    .length;
}

/** Points that are not sound and have sound points past them: the holes of the row, one way. */
export function holesPast(line: readonly LinePoint[]): readonly LinePoint[] {
  const last = line.findLastIndex(isSound);
  return line.slice(0, last + 1).filter((point) => !isSound(point));
}
