import type { Issue } from '$src/core/issue';
import { type CastingRow, FAULTS } from '$src/report/castings/casting';
import type { Cell, CellId } from './kinds';

/** Most castings of one row; more is a slip of typing. */
export const MOST_CASTINGS = 100_000;

/** What is wrong with a castings log. A row without castings is in order: it counts nothing yet. Paths start at the cell, e.g. `castings.2.good`. */
export function checkCastings(castings: readonly CastingRow[], cells: ReadonlyMap<CellId, Cell>): Issue[] {
  return castings.flatMap((row, index) => [
    ...pourIssues(row, index, cells),
    ...countIssues(row, index),
    ...settingIssues(row, index),
  ]);
}

function pourIssues({ pour }: CastingRow, index: number, cells: ReadonlyMap<CellId, Cell>): Issue[] {
  if (pour === null || cells.get(pour)?.kind === 'pour') return [];
  const message = `Row ${index + 1} belongs to a pour that is not in the book.`;
  return [{ path: `castings.${index}.pour`, message, remedy: 'Choose a pour, or none.' }];
}

function countIssues(row: CastingRow, index: number): Issue[] {
  const counts = [
    { path: 'good', name: 'good castings', count: row.good },
    ...FAULTS.map(({ fault, name }) => ({
      path: `bad.${fault}`,
      name: `castings with ${name}`,
      count: row.bad[fault],
    })),
  ];
  return counts
    .filter(({ count }) => !(Number.isInteger(count) && count >= 0 && count <= MOST_CASTINGS))
    .map(({ path, name, count }) => ({
      path: `castings.${index}.${path}`,
      message: `Row ${index + 1}: ${count} is no number of ${name}.`,
      remedy: 'Type a whole number, 0 or more.',
    }));
}

function settingIssues(row: CastingRow, index: number): Issue[] {
  return (['tiltTime', 'mass', 'metalTemperature', 'dieTemperature'] as const)
    .filter((field) => row[field] !== null && !(row[field] > 0))
    .map((field) => ({
      path: `castings.${index}.${field}`,
      message: `Row ${index + 1}: this cannot be 0 or less.`,
      remedy: 'Type what was measured, or leave it empty.',
    }));
}
