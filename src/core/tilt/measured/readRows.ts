import type { Issue } from '$src/core/issue';
import { fromDegrees, fromMilliseconds, toDegrees } from '$src/core/units';

/** One reading: time [s] and angle [rad], as the file has them. */
export interface Reading {
  readonly time: number;
  readonly angle: number;
}

/** What was made of the file, so that a person can see and correct it. */
export interface Guess {
  /** Columns of time and angle, from 0. */
  readonly timeColumn: number;
  readonly angleColumn: number;
  readonly timeUnit: 's' | 'ms';
  readonly angleUnit: '°' | 'rad';
  readonly decimal: '.' | ',';
  readonly separator: ';' | ',' | 'tab' | 'space';
  readonly header: string | null;
}

export interface Readings {
  readonly rows: readonly Reading[];
  readonly guess: Guess;
  /** Rows that were left out, by their line in the file. */
  readonly wrongRows: readonly Issue[];
}

export type ReadResult = Readings | { readonly issues: readonly Issue[] };

const FEWEST = 4;
/** Readings in a file: three minutes at a hundred a second, where a tilt takes ten seconds. */
const MOST = 20_000;
/** Characters in a file; so many readings take a tenth of it. */
const LARGEST = 5_000_000;
const MOST_NAMED = 20;
const SEPARATORS = { ';': /;/, ',': /,/, tab: /\t/, space: /\s+/ } as const;

/**
 * Reads time and angle from the text of a phone's or encoder's file: separator, decimal comma, header and units are
 * guessed. Angles beyond 2π can only be degrees; smaller ones are radians when the header says so, else by their span.
 */
export function readRows(text: string, forced: Partial<Guess> = {}): ReadResult {
  if (text.length > LARGEST)
    return refused(`The file has ${text.length} characters; one of a tilt has at most ${LARGEST}.`);
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const filled = lines.filter((line) => line.trim() !== '' && !line.startsWith('#'));
  if (filled.length === 0) return refused('The file has no rows.');
  if (filled.length > MOST)
    return refused(`The file has ${filled.length} rows; one of a tilt has at most ${MOST}.`);
  const separator = forced.separator ?? separatorOf(filled);
  const decimal =
    forced.decimal ?? (separator !== ',' && filled.some((line) => /\d,\d/.test(line)) ? ',' : '.');
  const cellsOf = (line: string) =>
    line
      .trim()
      .split(SEPARATORS[separator])
      .map((cell) => cell.trim());
  const header = cellsOf(filled[0]!).some((cell) => Number.isNaN(numberOf(cell, decimal)))
    ? filled[0]!
    : null;
  const columns = columnsOf(header === null ? [] : cellsOf(header), forced);
  const read = readLines(lines, header, (line) => {
    const cells = cellsOf(line);
    return [numberOf(cells[columns.time] ?? '', decimal), numberOf(cells[columns.angle] ?? '', decimal)];
  });
  if (read.pairs.length < FEWEST)
    return refused(
      `Only ${read.pairs.length} rows have a time and an angle, in columns ${columns.time + 1} and ${columns.angle + 1}.`,
    );
  const units = unitsOf(read.pairs, header === null ? [] : cellsOf(header), columns);
  const guess: Guess = {
    timeColumn: columns.time,
    angleColumn: columns.angle,
    timeUnit: forced.timeUnit ?? units.timeUnit,
    angleUnit: forced.angleUnit ?? units.angleUnit,
    decimal,
    separator,
    header,
  };
  const rows = read.pairs.map(([time, angle]) => ({
    time: guess.timeUnit === 'ms' ? fromMilliseconds(time) : time,
    angle: guess.angleUnit === '°' ? fromDegrees(angle) : angle,
  }));
  return { rows, guess, wrongRows: read.wrongRows };
}

const refused = (message: string): ReadResult => ({
  issues: [
    { path: 'file', message, remedy: 'Give a file of two columns, time and angle, one reading to a line.' },
  ],
});

function separatorOf(lines: readonly string[]): Guess['separator'] {
  const sample = lines.slice(-Math.min(lines.length, 20));
  const all = (pattern: RegExp) => sample.every((line) => pattern.test(line.trim()));
  if (all(/;/)) return ';';
  if (all(/\t/)) return 'tab';
  // "0,01 12,5" is two numbers with decimal commas; "0.01, 12.5" is not.
  if (all(/\S\s+\S/) && !sample.some((line) => /,\s/.test(line))) return 'space';
  return ',';
}

function numberOf(cell: string, decimal: '.' | ','): number {
  const bare = cell
    .replaceAll('"', '')
    .replace(/[\u2212\u2013]/, '-')
    .replace(decimal, '.');
  return bare === '' ? Number.NaN : Number(bare);
}

function columnsOf(names: readonly string[], forced: Partial<Guess>): { time: number; angle: number } {
  const find = (pattern: RegExp) => names.findIndex((name) => pattern.test(name.toLowerCase()));
  const time = Math.max(0, find(/time|zeit|^"?t\b|seconds/));
  const named = find(/angle|incl|pitch|tilt|roll|winkel|deg|phi/);
  const angle = named >= 0 ? named : time === 0 ? 1 : 0;
  return { time: forced.timeColumn ?? time, angle: forced.angleColumn ?? angle };
}

type Pair = readonly [time: number, angle: number];

function readLines(lines: readonly string[], header: string | null, pairOf: (line: string) => Pair) {
  const pairs: Pair[] = [];
  const wrongRows: Issue[] = [];
  lines.forEach((line, index) => {
    if (line.trim() === '' || line.startsWith('#') || line === header) return;
    const pair = pairOf(line);
    const wrong = wrongIn(pair, pairs.at(-1));
    if (wrong === null) pairs.push(pair);
    else if (wrongRows.length < MOST_NAMED)
      wrongRows.push({
        path: `line ${index + 1}`,
        message: `Line ${index + 1}: ${wrong}`,
        remedy: 'It was left out.',
      });
  });
  return { pairs, wrongRows };
}

function wrongIn([time, angle]: Pair, before: Pair | undefined): string | null {
  if (!Number.isFinite(time)) return 'the time is not a number.';
  if (!Number.isFinite(angle)) return 'the angle is not a number.';
  return before && time <= before[0] ? 'the time is not later than in the row before.' : null;
}

/** A tilt takes seconds: longer than this in the file's own numbers, and they are milliseconds. */
const LONGEST_IN_SECONDS = 300;
/** Radians of a tilt stay within this; a sweep of 5° or less is not a tilt. */
const MOST_RADIANS = 3.2;

function unitsOf(
  pairs: readonly Pair[],
  names: readonly string[],
  columns: { time: number; angle: number },
): Pick<Guess, 'timeUnit' | 'angleUnit'> {
  const timeName = names[columns.time]?.toLowerCase() ?? '';
  const angleName = names[columns.angle]?.toLowerCase() ?? '';
  const span = pairs.at(-1)![0] - pairs[0]![0];
  const inMilliseconds =
    /\bms\b|milli|_ms/.test(timeName) || (!/\(s\)|_s\b|sec/.test(timeName) && span > LONGEST_IN_SECONDS);
  const most = Math.max(...pairs.map(([, angle]) => Math.abs(angle)));
  const inRadians = /rad/.test(angleName) || (!/deg|°/.test(angleName) && most <= MOST_RADIANS);
  return { timeUnit: inMilliseconds ? 'ms' : 's', angleUnit: inRadians ? 'rad' : '°' };
}

/** In words, for the person who has to agree: "time in s, angle in °, decimal comma". */
export function guessText(
  { timeUnit, angleUnit, decimal, timeColumn, angleColumn }: Guess,
  rows: readonly Reading[],
): string {
  const angles = rows.map(({ angle }) => toDegrees(angle));
  const span = `${Math.max(...angles).toFixed(1)}° to ${Math.min(...angles).toFixed(1)}°`.replaceAll(
    '-',
    '−',
  );
  return `Column ${timeColumn + 1} is time in ${timeUnit}, column ${angleColumn + 1} is angle in ${angleUnit}${decimal === ',' ? ', decimal comma' : ''}; ${rows.length} rows, ${span}.`;
}
