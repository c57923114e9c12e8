import { breakPoints } from '$src/core/section/breakPoints';
import { closedRoof } from '$src/core/section/closedRoof';
import { lineAt, SAME_PLACE } from '$src/core/section/lineAt';
import type { Opening, Point, Section } from '$src/core/section/section';
import { widthAt } from '$src/core/section/widthAt';
import type { Column } from './columnVolume';

/** A rim of an opening: metal in the column beside it that stands higher than the rim leaves. */
export interface Rim {
  readonly column: number;
  readonly x: number;
  readonly y: number;
}

/** A section cut into columns at every break point, from the back wall to the die end. */
export interface Columns {
  readonly columns: readonly Column[];
  /** Passage between column i − 1 and column i: its sill and its top [m]. */
  readonly sills: readonly number[];
  readonly tops: readonly number[];
  /** Whether a column lies under an opening. */
  readonly isOpen: readonly boolean[];
  readonly rims: readonly Rim[];
  readonly mouth: number;
}

/**
 * Under an opening the column reaches to the straight line between the two rims. That line stands in for the
 * open air: a level surface cannot rise above the lower rim, so it never meets the line, at any inclination.
 */
export function columnsOf(section: Section): Columns {
  const marks = breakPoints(section);
  const roof = closedRoof(section);
  const columns = marks.slice(1).map((right, i) => columnBetween(section, roof, marks[i]!, right));
  const isOpen = columns.map((column) =>
    section.openings.some((opening) => covers(section, opening, column)),
  );
  return withPassages(columns, isOpen, rimsOf(section, columns), section.mouth);
}

function columnBetween(section: Section, roof: readonly Point[], left: number, right: number): Column {
  return {
    left,
    right,
    floorLeft: lineAt(section.floor, left, 'right'),
    floorRight: lineAt(section.floor, right, 'left'),
    roofLeft: lineAt(roof, left, 'right'),
    roofRight: lineAt(roof, right, 'left'),
    widthLeft: widthAt(section, left, 'right'),
    widthRight: widthAt(section, right, 'left'),
  };
}

function covers(section: Section, opening: Opening, column: Column): boolean {
  if (opening.wall !== 'roof') return false;
  const centre = (column.left + column.right) / 2;
  return centre > section.roof[opening.from]!.x && centre < section.roof[opening.to]!.x;
}

function withPassages(
  columns: readonly Column[],
  isOpen: readonly boolean[],
  rims: readonly Rim[],
  mouth: number,
): Columns {
  const before = (i: number) => columns[Math.max(i - 1, 0)]!;
  const sills = columns.map((column, i) =>
    i === 0 ? column.floorLeft : Math.max(before(i).floorRight, column.floorLeft),
  );
  const tops = columns.map((column, i) =>
    i === 0 ? column.roofLeft : Math.min(before(i).roofRight, column.roofLeft),
  );
  return { columns, sills, tops, isOpen, rims, mouth };
}

function rimsOf(section: Section, columns: readonly Column[]): Rim[] {
  return section.openings.flatMap((opening) => {
    if (opening.wall === 'back wall') return [rim(section.floor[0]!, 0), rim(section.roof[0]!, 0)];
    const from = section.roof[opening.from]!;
    const to = section.roof[opening.to]!;
    const [first, last] = columnsBeside(columns, from, to);
    return [rim(from, first), rim(to, last)];
  });
}

const rim = (point: Point, column: number): Rim => ({ column, x: point.x, y: point.y });

/** The columns that hold the metal at the two rims; both rims of an upright opening are beside the taller side. */
function columnsBeside(columns: readonly Column[], from: Point, to: Point): [number, number] {
  const startsAt = columns.findIndex((column) => column.left >= from.x - SAME_PLACE);
  const endsAt = columns.findLastIndex((column) => column.right <= to.x + SAME_PLACE);
  if (to.x - from.x > SAME_PLACE) return [startsAt, endsAt];
  const beside = from.y > to.y || startsAt < 0 ? endsAt : startsAt;
  return [beside, beside];
}

/** The same columns seen in a frame with y reversed: what was roof is floor. For inclinations past upright. */
export function mirrored(source: Columns): Columns {
  const columns = source.columns.map((column) => ({
    ...column,
    floorLeft: -column.roofLeft,
    floorRight: -column.roofRight,
    roofLeft: -column.floorLeft,
    roofRight: -column.floorRight,
  }));
  const rims = source.rims.map((place) => ({ ...place, y: -place.y }));
  return withPassages(columns, source.isOpen, rims, source.mouth);
}
