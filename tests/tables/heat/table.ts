/**
 * Check tables for heat, freezing and mass (E01 to E08, F01 to F03): each file carries its formula, its source and how it
 * was verified. Values were worked out with 30 digits and kept to 10; lengths, times and temperatures as named by the
 * columns. Sources marked memory were not seen again when the tables were made.
 */
export interface Table {
  readonly id: string;
  readonly source: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** Half a unit in the tenth digit, relative. */
export const HALF_A_DIGIT = 5e-10;

/** A number of a table by row and name of its column. @throws RangeError when there is no such column */
export function entry(table: Table, row: readonly (string | number)[], column: string): number {
  const index = table.columns.indexOf(column);
  const value = row[index];
  if (typeof value !== 'number') throw new RangeError(`${table.id}: no number in column ${column}`);
  return value;
}

/** Rows with a name in their first column, as pairs. */
export function named(table: Table): ReadonlyMap<string, number> {
  return new Map(table.rows.map((row) => [String(row[0]), Number(row[1])]));
}

/** Whether a value agrees with a printed one to its last digit. */
export function relativeError(value: number, expected: number): number {
  return expected === 0 ? Math.abs(value) : Math.abs(value / expected - 1);
}
