import { cosine, sine } from '$src/core/elementary/sine';
import type { Point, Section } from '$src/core/section/section';
import { columnsOf, mirrored } from './columns';
import type { Column } from './columnVolume';
import type { Pool } from './pools';
import { cutColumn } from './terrain';

/**
 * Outlines of the metal in the die frame [m], one closed polygon per pool (first point not repeated), for drawing.
 *
 * @param pools of the section at this inclination, from `levelPath`
 */
export function metalPolygons(section: Section, pools: readonly Pool[], inclination: number): Point[][] {
  const upright = columnsOf(section);
  const overturned = cosine(inclination) < 0;
  const { columns } = overturned ? mirrored(upright) : upright;
  const sin = sine(inclination);
  const cos = Math.abs(cosine(inclination));
  return pools
    .map((pool) => outlineOf(columns, pool, sin, cos))
    .filter((outline) => outline.length > 2)
    .map((outline) => (overturned ? outline.map(({ x, y }) => ({ x, y: -y })) : outline));
}

function outlineOf(columns: readonly Column[], pool: Pool, sin: number, cos: number): Point[] {
  const below: Point[] = [];
  const above: Point[] = [];
  for (const whole of columns) {
    const column = between(whole, pool.from, pool.to);
    if (!column) continue;
    addWetPart(column, pool.level, sin, cos, below, above);
  }
  return [...below, ...above.reverse()].filter(
    (point, i, all) => !isSame(point, all[(i + all.length - 1) % all.length]!),
  );
}

const isSame = (a: Point, b: Point) => a.x === b.x && a.y === b.y;

function between(column: Column, from: number, to: number): Column | null {
  if (column.right <= from || column.left >= to) return null;
  const right = column.right > to ? cutColumn(column, to) : column;
  return right.left < from ? cutLeft(right, from) : right;
}

function cutLeft(column: Column, left: number): Column {
  const part = (left - column.left) / (column.right - column.left);
  return {
    ...column,
    left,
    floorLeft: column.floorLeft + (column.floorRight - column.floorLeft) * part,
    roofLeft: column.roofLeft + (column.roofRight - column.roofLeft) * part,
    widthLeft: column.widthLeft + (column.widthRight - column.widthLeft) * part,
  };
}

/** Adds the wet stretch of one column: its floor to `below`, its surface or roof to `above`. */
function addWetPart(
  column: Column,
  level: number,
  sin: number,
  cos: number,
  below: Point[],
  above: Point[],
): void {
  const wet = stretchUnder(column, level, sin, cos, column.floorLeft, column.floorRight);
  if (!wet) return;
  const floorAt = (x: number) => heightOn(column, x, column.floorLeft, column.floorRight);
  const roofAt = (x: number) => heightOn(column, x, column.roofLeft, column.roofRight);
  const surfaceAt = (x: number) => Math.max(floorAt(x), Math.min(roofAt(x), (level - x * sin) / cos));
  const add = (x: number, top: number) => {
    below.push({ x, y: floorAt(x) });
    above.push({ x, y: top });
  };
  // Where the level meets floor or roof the height is theirs: near upright the surface's own height is ill-defined.
  const covered = stretchUnder(column, level, sin, cos, column.roofLeft, column.roofRight);
  const [from, to] = wet;
  if (from > column.left) add(from, floorAt(from));
  else if (covered?.[0] !== column.left) add(from, surfaceAt(from));
  for (const x of covered ?? []) add(x, roofAt(x));
  if (to < column.right) add(to, floorAt(to));
  else if (covered?.[1] !== column.right) add(to, surfaceAt(to));
}

/** The stretch of x in which a straight line of the column lies under the level; null when it lies above throughout. */
function stretchUnder(
  column: Column,
  level: number,
  sin: number,
  cos: number,
  left: number,
  right: number,
): [number, number] | null {
  const atLeft = column.left * sin + left * cos - level;
  const atRight = column.right * sin + right * cos - level;
  if (atLeft >= 0 && atRight >= 0) return null;
  const crossing = column.left + ((column.right - column.left) * atLeft) / (atLeft - atRight);
  if (atLeft > 0) return [crossing, column.right];
  if (atRight > 0) return [column.left, crossing];
  return [column.left, column.right];
}

function heightOn(column: Column, x: number, left: number, right: number): number {
  return left + ((right - left) * (x - column.left)) / (column.right - column.left);
}
