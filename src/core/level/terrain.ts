import { cosine, sine } from '$src/core/elementary/sine';
import type { Columns, Rim } from './columns';
import { mirrored } from './columns';
import { type Column, type ColumnLevels, columnLevels } from './columnVolume';

/** A hollow of the turned floor: columns from…to (both included) whose metal runs to one lowest place. */
export interface Hollow {
  readonly from: number;
  readonly to: number;
}

/**
 * The section turned to one inclination, from the back wall as far as metal may go (`reach`).
 * All elevations are lab elevations [m].
 */
export interface Terrain {
  readonly sin: number;
  /** Never negative: past upright the columns are mirrored. */
  readonly cos: number;
  readonly columns: readonly Column[];
  readonly levels: readonly ColumnLevels[];
  /** Sill between column i − 1 and column i. */
  readonly sills: readonly number[];
  readonly hollows: readonly Hollow[];
  readonly rims: readonly Rim[];
  /** Whether a wall stands at `reach`, short of the die end. */
  readonly isDammed: boolean;
}

/** Barriers lower than this hold nothing [m]: a picometre, above round-off and far below any metal. */
const NO_BARRIER = 1e-12;

/** A section ready to be turned: its columns as drawn, and mirrored for inclinations past upright. */
export interface Turnable {
  readonly upright: Columns;
  readonly overturned: Columns;
}

export const turnable = (upright: Columns): Turnable => ({ upright, overturned: mirrored(upright) });

/** @param reach place beyond which metal may not go, as if a wall stood there [m]; Infinity for the whole section */
export function terrainAt(section: Turnable, inclination: number, reach: number): Terrain {
  const sin = sine(inclination);
  const turnedCos = cosine(inclination);
  const source = turnedCos < 0 ? section.overturned : section.upright;
  const cos = Math.abs(turnedCos);
  const columns = columnsUpTo(source.columns, reach);
  const levels = columns.map((column) => columnLevels(column, sin, cos));
  const sills = columns.map((column, i) => column.left * sin + source.sills[i]! * cos);
  const rims = source.rims.filter((rim) => rim.column < columns.length);
  const isDammed = reach < source.columns.at(-1)!.right;
  return { sin, cos, columns, levels, sills, hollows: hollowsOf(levels, sills), rims, isDammed };
}

function columnsUpTo(columns: readonly Column[], reach: number): readonly Column[] {
  const beyond = columns.findIndex((column) => column.right > reach);
  if (beyond < 0) return columns;
  const last = columns[beyond]!;
  const whole = columns.slice(0, beyond);
  return last.left < reach ? [...whole, cutColumn(last, reach)] : whole;
}

/** The part of a column left of a place inside it. */
export function cutColumn(column: Column, right: number): Column {
  const part = (right - column.left) / (column.right - column.left);
  return {
    ...column,
    right,
    floorRight: column.floorLeft + (column.floorRight - column.floorLeft) * part,
    roofRight: column.roofLeft + (column.roofRight - column.roofLeft) * part,
    widthRight: column.widthLeft + (column.widthRight - column.widthLeft) * part,
  };
}

/** Joins neighbours as long as one of them runs into the other without a barrier. */
function hollowsOf(levels: readonly ColumnLevels[], sills: readonly number[]): Hollow[] {
  const hollows: { from: number; to: number; bottom: number }[] = [];
  for (let i = 0; i < levels.length; i++) {
    let next = { from: i, to: i, bottom: levels[i]!.z1 };
    let before = hollows.at(-1);
    while (before && sills[next.from]! - Math.max(before.bottom, next.bottom) <= NO_BARRIER) {
      next = { from: before.from, to: i, bottom: Math.min(before.bottom, next.bottom) };
      hollows.pop();
      before = hollows.at(-1);
    }
    hollows.push(next);
  }
  return hollows;
}

/** Lowest elevation in the columns from…to. */
export function bottomOf(terrain: Terrain, from: number, to: number): number {
  let bottom = Number.POSITIVE_INFINITY;
  for (let i = from; i <= to; i++) bottom = Math.min(bottom, terrain.levels[i]!.z1);
  return bottom;
}

/** Highest elevation in the columns from…to. */
export function topOf(terrain: Terrain, from: number, to: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) top = Math.max(top, terrain.levels[i]!.z4);
  return top;
}
