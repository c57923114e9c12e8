import { readFileSync } from 'node:fs';

/** A table of known values: worked out with 30 digits and checked by a second route; the source is in the file. */
export interface Table {
  readonly source: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (number | string)[])[];
}

export function readTable(name: string): Table {
  return JSON.parse(readFileSync(new URL(`../tables/${name}.json`, import.meta.url), 'utf8'));
}

/** The rows as numbers by column name. */
export function numbersOf({ columns, rows }: Table): Record<string, number>[] {
  return rows.map((row) => Object.fromEntries(columns.map((column, k) => [column, Number(row[k])])));
}
