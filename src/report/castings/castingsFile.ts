import { csvFormatRows, csvParseRows, dsvFormat } from 'd3';
import type { Issue } from '$src/core/issue';
import { fromCelsius, fromDegrees, toCelsius, toDegrees } from '$src/core/units';
import { type CastingRow, EMPTY_ROW, FAULTS, type Fault } from './casting';

/** A pour that a row may belong to. */
export interface NamedPour {
  readonly id: string;
  readonly name: string;
}

interface ReadingColumn {
  readonly field: 'startAngle' | 'tiltTime' | 'mass' | 'metalTemperature' | 'dieTemperature';
  readonly toFile: (si: number) => number;
  readonly fromFile: (shown: number) => number;
}
const same = (value: number): number => value;

/** Columns of settings as run, with their unit in the name. */
const READINGS: Readonly<Record<string, ReadingColumn>> = {
  start_angle_deg: { field: 'startAngle', toFile: toDegrees, fromFile: fromDegrees },
  tilt_time_s: { field: 'tiltTime', toFile: same, fromFile: same },
  charge_kg: { field: 'mass', toFile: same, fromFile: same },
  metal_C: { field: 'metalTemperature', toFile: toCelsius, fromFile: fromCelsius },
  die_C: { field: 'dieTemperature', toFile: toCelsius, fromFile: fromCelsius },
};
const COUNTS = ['good', ...FAULTS.map(({ fault }) => fault)] as const;
const COLUMNS = ['date', 'pour', ...Object.keys(READINGS), ...COUNTS, 'remark'];

/** The log as the text of a CSV file: one row each, units in the names of the columns, pours by name. */
export function castingsCsv(castings: readonly CastingRow[], pours: readonly NamedPour[]): string {
  const nameOf = (id: string | null): string => pours.find((pour) => pour.id === id)?.name ?? '';
  const rows = castings.map((row) => [
    row.date,
    nameOf(row.pour),
    ...Object.values(READINGS).map(({ field, toFile }) => readingText(row[field], toFile)),
    ...COUNTS.map((count) => String(count === 'good' ? row.good : row.bad[count])),
    row.remark,
  ]);
  return `${csvFormatRows([COLUMNS, ...rows])}\n`;
}

/** Twelve digits: more than any gauge, and degrees come back as they were typed. */
const readingText = (value: number | null, toFile: (si: number) => number): string =>
  value === null ? '' : String(Number(toFile(value).toPrecision(12)));

/** Rows that could be read, and one issue for every row or column that could not. */
export interface ReadCastings {
  readonly castings: readonly CastingRow[];
  readonly issues: readonly Issue[];
}

const MOST_NAMED = 20;
/** Rows a log holds; more could not be read back from its book. */
export const MOST_ROWS = 2000;
/** A sentence names what a file says by its beginning. */
const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

/** Reads a log from CSV text, commas or semicolons, decimal point or comma. Rows that are wrong are named and left out, those beyond `room` counted. */
export function readCastings(
  text: string,
  pours: readonly NamedPour[],
  room: number = MOST_ROWS,
): ReadCastings {
  const bare = text.replace(/^\uFEFF/, '');
  const isSemicolon = (bare.split('\n')[0] ?? '').includes(';');
  const [head = [], ...rows] = isSemicolon ? dsvFormat(';').parseRows(bare) : csvParseRows(bare);
  const columns = head.map((name) => name.trim());
  const wrongHead = headIssues(columns);
  if (wrongHead.some(({ path }) => path === 'head')) return { castings: [], issues: wrongHead };
  const castings: CastingRow[] = [];
  const issues = [...wrongHead];
  let beyond = 0;
  rows.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const read = readRow(new Map(columns.map((name, at) => [name, (cells[at] ?? '').trim()])), pours);
    const place = `Row ${index + 2} of the file`;
    issues.push(
      ...read.issues.map(({ message, remedy }) => ({
        path: `row ${index + 2}`,
        message: `${place}: ${message}`,
        remedy,
      })),
    );
    if (read.row && castings.length >= room) beyond += 1;
    else if (read.row) castings.push(read.row);
  });
  return { castings, issues: beyond > 0 ? [tooMany(beyond), ...cut(issues)] : cut(issues) };
}

const tooMany = (beyond: number): Issue => ({
  path: 'rows',
  message: `A log holds ${MOST_ROWS} rows; ${beyond} more were left out.`,
  remedy: 'Split the file, and read the rest into a log of its own.',
});

function cut(issues: readonly Issue[]): readonly Issue[] {
  if (issues.length <= MOST_NAMED) return issues;
  const message = `And ${issues.length - MOST_NAMED} more of this kind.`;
  return [
    ...issues.slice(0, MOST_NAMED),
    { path: 'rows', message, remedy: 'Mend these first, then read the file again.' },
  ];
}

function headIssues(columns: readonly string[]): Issue[] {
  if (!columns.includes('good')) {
    const message = 'The first row does not name the columns: there is no column “good”.';
    return [
      { path: 'head', message, remedy: `Name them ${COLUMNS.join(', ')}; save a log as CSV to see one.` },
    ];
  }
  const strange = columns.filter((name) => name !== '' && !COLUMNS.includes(name));
  return strange.map((name) => ({
    path: 'column',
    message: `Column “${shortened(name)}” is not known and was left out.`,
    remedy: `Known are ${COLUMNS.join(', ')}.`,
  }));
}

interface Problem {
  readonly message: string;
  readonly remedy: string;
}

function readRow(
  cells: ReadonlyMap<string, string>,
  pours: readonly NamedPour[],
): { readonly row: CastingRow | null; readonly issues: readonly Problem[] } {
  const issues: Problem[] = [];
  const cell = (name: string): string => cells.get(name) ?? '';
  const numberIn = (name: string, isCount: boolean): number | null => {
    if (cell(name) === '') return null;
    const value = numberOf(cell(name));
    const isFit = isCount ? Number.isInteger(value) && value >= 0 : Number.isFinite(value);
    if (isFit) return value;
    const wanted = isCount ? 'a whole number, 0 or more' : 'a number';
    issues.push({
      message: `“${shortened(cell(name))}” in ${name} is not ${wanted}.`,
      remedy: 'The row was left out.',
    });
    return null;
  };
  const counts = COUNTS.map((name) => numberIn(name, true) ?? 0);
  const readings = Object.entries(READINGS).map(([name, { field, fromFile }]) => {
    const value = numberIn(name, false);
    return [field, value === null ? null : fromFile(value)] as const;
  });
  if (issues.length === 0 && counts.every((count) => count === 0))
    issues.push({ message: 'no castings, good or bad.', remedy: 'The row was left out.' });
  if (issues.length > 0) return { row: null, issues };
  const pour = pours.find(({ name }) => name === cell('pour'))?.id ?? null;
  if (pour === null && cell('pour') !== '')
    issues.push({
      message: `no pour is called “${shortened(cell('pour'))}”.`,
      remedy: 'The row was kept without a pour; choose one.',
    });
  const bad = Object.fromEntries(FAULTS.map(({ fault }, index) => [fault, counts[index + 1]])) as Record<
    Fault,
    number
  >;
  const words = { date: cell('date').slice(0, 300), remark: cell('remark').slice(0, 300) };
  return {
    row: { ...EMPTY_ROW, ...words, pour, ...Object.fromEntries(readings), good: counts[0]!, bad },
    issues,
  };
}

const numberOf = (text: string): number => Number(text.replace(/[\u2212\u2013]/, '-').replace(',', '.'));
