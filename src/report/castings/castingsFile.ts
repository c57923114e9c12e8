import { csvFormatRows, csvParseRows, dsvFormat } from 'd3';
import type { Issue } from '$src/core/issue';
import { type PageUnits, toCelsius, toDegrees } from '$src/core/units';
import { beginningOf } from '../wording';
import { type CastingRow, castingsIn, EMPTY_ROW, FAULTS, NO_FAULTS } from './casting';
import { type Column, type Count, columnOf, type ReadingField } from './castingsColumns';

/** A pour that a row may belong to. */
export interface NamedPour {
  readonly id: string;
  readonly name: string;
}

interface ReadingColumn {
  readonly field: ReadingField;
  readonly toFile: (si: number) => number;
}
const same = (value: number): number => value;

/** Columns of settings as run, with their unit in the name. */
const READINGS: Readonly<Record<string, ReadingColumn>> = {
  start_angle_deg: { field: 'startAngle', toFile: toDegrees },
  tilt_time_s: { field: 'tiltTime', toFile: same },
  charge_kg: { field: 'mass', toFile: same },
  metal_C: { field: 'metalTemperature', toFile: toCelsius },
  die_C: { field: 'dieTemperature', toFile: toCelsius },
};
const COUNTS: readonly Count[] = ['good', ...FAULTS.map(({ fault }) => fault)];
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

/** What somebody said that a column counts; null = no castings, leave it out. */
export type Answers = ReadonlyMap<string, Count | null>;

/** Rows that could be read, and one issue for every row or column that could not. */
export interface ReadCastings {
  readonly castings: readonly CastingRow[];
  readonly issues: readonly Issue[];
  /** Headings of columns that may count castings, for all that is known; until each is answered no row is to be taken. */
  readonly asks: readonly string[];
}

const MOST_NAMED = 20;
/** Letters of a date, a pour's name or a remark. */
const LONGEST = 300;
/** Rows a log holds; more could not be read back from its book. */
export const MOST_ROWS = 2000;

export interface ReadingOf {
  readonly pours: readonly NamedPour[];
  /** Rows the log still takes. */
  readonly room?: number;
  /** What readings without a unit are in. */
  readonly units?: PageUnits;
  readonly answers?: Answers;
}

/**
 * Reads a log from CSV text, commas or semicolons, decimal point or comma. Rows that are wrong are named and left out,
 * those beyond `room` counted.
 */
export function readCastings(text: string, told: ReadingOf): ReadCastings {
  const { pours, room = MOST_ROWS, units, answers = new Map() } = told;
  const bare = text.replace(/^\uFEFF/, '');
  const isSemicolon = (bare.split('\n')[0] ?? '').includes(';');
  const [head = [], ...rows] = isSemicolon ? dsvFormat(';').parseRows(bare) : csvParseRows(bare);
  const headings = head.map((name) => name.trim());
  const columns = headings.map((name) => answered(name, answers) ?? columnOf(name, units));
  if (!columns.some((column) => column?.holds === 'castings' && column.count === 'good'))
    return { castings: [], issues: [noGood()], asks: [] };
  const strange = [...new Set(headings.filter((name, at) => name !== '' && columns[at] === null))];
  const asks = strange.filter(
    (name) => !answers.has(name) && mayCount(rows.map((cells) => cells[headings.indexOf(name)] ?? '')),
  );
  const castings: CastingRow[] = [];
  const issues = strange.filter((name) => !asks.includes(name)).map(leftOutColumn);
  let beyond = 0;
  rows.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const read = readRow(
      columns.map((column, at) => ({ heading: headings[at]!, column, text: (cells[at] ?? '').trim() })),
      pours,
    );
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
  return { castings, issues: beyond > 0 ? [tooMany(beyond), ...cut(issues)] : cut(issues), asks };
}

function answered(heading: string, answers: Answers): Column | null {
  const count = answers.get(heading);
  return count ? { holds: 'castings', count } : null;
}

/** Whether what stands in a column may be numbers of castings: whole numbers and nothing else, not all of them 0. */
function mayCount(cells: readonly string[]): boolean {
  const said = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  return said.every((cell) => /^\d+$/.test(cell)) && said.some((cell) => Number(cell) > 0);
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

const noGood = (): Issue => ({
  path: 'head',
  message: 'The first row does not name the columns: there is no column “good”.',
  remedy: `Name them ${COLUMNS.join(', ')}; save a log as CSV to see one.`,
});

const leftOutColumn = (name: string): Issue => ({
  path: 'column',
  message: `Column “${beginningOf(name)}” is not known and was left out.`,
  remedy: `Known are ${COLUMNS.join(', ')}, and the headings of the log on the page.`,
});

interface Problem {
  readonly message: string;
  readonly remedy: string;
}

interface Entry {
  readonly heading: string;
  readonly column: Column | null;
  readonly text: string;
}

/** A number of a row, or what is wrong with it; null where nothing is written. */
function entryNumber({ heading, text }: Entry, isCount: boolean): number | null | Problem {
  if (text === '') return null;
  const value = numberOf(text);
  const isFit = isCount ? Number.isInteger(value) && value >= 0 : Number.isFinite(value);
  if (isFit) return value;
  const wanted = isCount ? 'a whole number, 0 or more' : 'a number';
  return {
    message: `“${beginningOf(text)}” in ${beginningOf(heading)} is not ${wanted}.`,
    remedy: 'The row was left out.',
  };
}

function readRow(
  entries: readonly Entry[],
  pours: readonly NamedPour[],
): { readonly row: CastingRow | null; readonly issues: readonly Problem[] } {
  const issues: Problem[] = [];
  const numberIn = (entry: Entry, isCount: boolean): number | null => {
    const value = entryNumber(entry, isCount);
    if (value === null || typeof value === 'number') return value;
    issues.push(value);
    return null;
  };
  const words = { date: '', pour: '', remark: '' };
  const counts: Record<Count, number> = { good: 0, ...NO_FAULTS };
  const readings: Partial<Record<ReadingField, number>> = {};
  let all: number | null = null;
  for (const entry of entries) {
    const { column, text } = entry;
    if (column?.holds === 'words') words[column.words] = text.slice(0, LONGEST);
    else if (column?.holds === 'castings') counts[column.count] += numberIn(entry, true) ?? 0;
    else if (column?.holds === 'all') all = numberIn(entry, true);
    else if (column?.holds === 'reading') {
      const value = numberIn(entry, false);
      if (value !== null) readings[column.field] = column.fromFile(value);
    }
  }
  const { good, ...bad } = counts;
  const { date, remark } = words;
  const row: CastingRow = { ...EMPTY_ROW, date, remark, ...readings, good, bad };
  if (issues.length === 0) issues.push(...sumProblems(castingsIn(row), all));
  if (issues.length > 0) return { row: null, issues };
  const pour = pours.find(({ name }) => name.slice(0, LONGEST) === words.pour)?.id ?? null;
  const isUnknown = pour === null && words.pour !== '';
  return { row: { ...row, pour }, issues: isUnknown ? [noPour(words.pour)] : [] };
}

/** A row that would count nothing, or not what it says itself. */
function sumProblems(sum: number, all: number | null): Problem[] {
  if (all !== null && all !== sum)
    return [
      { message: `it says ${all} in all, but its columns make ${sum}.`, remedy: 'The row was left out.' },
    ];
  return sum === 0 ? [{ message: 'no castings, good or bad.', remedy: 'The row was left out.' }] : [];
}

const noPour = (name: string): Problem => ({
  message: `no pour is called “${beginningOf(name)}”.`,
  remedy: 'The row was kept without a pour; choose one.',
});

const numberOf = (text: string): number => Number(text.replace(/[\u2212\u2013]/, '-').replace(',', '.'));
