import type { SettingValues } from './planAt';
import type { Study, StudyAxis } from './study';

/** The points of a study, numbered row by row: number = across + up × columns. A curve has one row. */
export interface Grid {
  readonly axes: readonly StudyAxis[];
  readonly columns: number;
  readonly rows: number;
  readonly count: number;
}

/** Points of the first look along each side. */
const COARSE = 8;

export function gridOf({ axes }: Pick<Study, 'axes'>): Grid {
  const [across, up] = axes;
  if (!across || axes.length > 2)
    throw new RangeError(`axes of a study: got ${axes.length}, expected 1 or 2`);
  const [columns, rows] = [across.points, up?.points ?? 1];
  return { axes, columns, rows, count: columns * rows };
}

export const placeOf = (grid: Grid, point: number): readonly [column: number, row: number] => [
  point % grid.columns,
  Math.floor(point / grid.columns),
];

export function axisValue({ from, to, points }: StudyAxis, index: number): number {
  return points > 1 ? from + ((to - from) * index) / (points - 1) : from;
}

/** Index along an axis, not rounded, of a value. */
export const axisIndex = ({ from, to, points }: StudyAxis, value: number): number =>
  to === from ? 0 : ((value - from) / (to - from)) * (points - 1);

/** Values of the settings at a point. */
export function valuesAt(grid: Grid, point: number): SettingValues {
  const place = placeOf(grid, point);
  return Object.fromEntries(grid.axes.map((axis, at) => [axis.setting, axisValue(axis, place[at]!)]));
}

/** Equally spread indices of the first look, first and last among them. */
function coarseIndices(points: number): number[] {
  const count = Math.min(points, COARSE);
  if (count < 2) return [0];
  return Array.from({ length: count }, (_, k) => Math.round((k * (points - 1)) / (count - 1)));
}

/** The points of the first look: 8 × 8 of them, or all of a small grid. */
export function coarsePoints(grid: Grid): number[] {
  const [columns, rows] = [coarseIndices(grid.columns), coarseIndices(grid.rows)];
  return rows.flatMap((row) => columns.map((column) => column + row * grid.columns));
}

/** Points next to one, corner to corner too. */
export function neighbours(grid: Grid, point: number): number[] {
  const [column, row] = placeOf(grid, point);
  const found: number[] = [];
  for (let up = Math.max(0, row - 1); up <= Math.min(grid.rows - 1, row + 1); up++)
    for (let along = Math.max(0, column - 1); along <= Math.min(grid.columns - 1, column + 1); along++)
      if (up !== row || along !== column) found.push(along + up * grid.columns);
  return found;
}
