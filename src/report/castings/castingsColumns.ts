import {
  fromCelsius,
  fromDegrees,
  fromFahrenheit,
  fromPounds,
  METRIC,
  type PageUnits,
} from '$src/core/units';
import { FAULTS, type Fault } from './casting';

export type ReadingField = 'startAngle' | 'tiltTime' | 'mass' | 'metalTemperature' | 'dieTemperature';
/** Castings that a column may count. */
export type Count = 'good' | Fault;

/** What a column of the file holds. */
export type Column =
  | { readonly holds: 'words'; readonly words: 'date' | 'pour' | 'remark' }
  | {
      readonly holds: 'reading';
      readonly field: ReadingField;
      readonly fromFile: (shown: number) => number;
    }
  | { readonly holds: 'castings'; readonly count: Count }
  /** All castings of the row: the sum of its other columns. */
  | { readonly holds: 'all' };

const same = (value: number): number => value;
const mass = { kg: same, lb: fromPounds } as const;
const temperature = { degC: fromCelsius, degF: fromFahrenheit } as const;

const UNITS: Readonly<Record<ReadingField, Readonly<Record<string, (shown: number) => number>>>> = {
  startAngle: { deg: fromDegrees, degree: fromDegrees, degrees: fromDegrees, '°': fromDegrees },
  tiltTime: { s: same, sec: same, seconds: same },
  mass,
  metalTemperature: { '°c': fromCelsius, c: fromCelsius, '°f': fromFahrenheit, f: fromFahrenheit },
  dieTemperature: { '°c': fromCelsius, c: fromCelsius, '°f': fromFahrenheit, f: fromFahrenheit },
};

const READINGS: Readonly<Record<string, ReadingField>> = {
  'start angle': 'startAngle',
  start: 'startAngle',
  'tilt time': 'tiltTime',
  charge: 'mass',
  metal: 'metalTemperature',
  'metal temperature': 'metalTemperature',
  die: 'dieTemperature',
  'die temperature': 'dieTemperature',
};

const WORDS: Readonly<Record<string, 'date' | 'pour' | 'remark'>> = {
  date: 'date',
  pour: 'pour',
  remark: 'remark',
  remarks: 'remark',
};

/** The names of the page, and plain ones beside them that leave no doubt. */
const COUNTS: Readonly<Record<string, Count>> = {
  good: 'good',
  ...Object.fromEntries(
    FAULTS.flatMap(
      ({ fault, name }) =>
        [
          [fault, fault],
          [name, fault],
        ] as const,
    ),
  ),
  folds: 'fold',
  'fold/oxide': 'fold',
  'folds or oxides': 'fold',
  oxide: 'fold',
  oxides: 'fold',
  laps: 'lap',
  'lap/misrun': 'lap',
  'laps or misruns': 'lap',
  misrun: 'lap',
  misruns: 'lap',
  others: 'other',
};

/** What a heading names; null when it is not known. A reading without its unit is taken in `units`. */
export function columnOf(heading: string, units: PageUnits = METRIC): Column | null {
  const name = plainHeading(heading);
  const words = named(WORDS, name);
  if (words) return { holds: 'words', words };
  const count = named(COUNTS, name);
  if (count) return { holds: 'castings', count };
  if (name === 'all' || name === 'total') return { holds: 'all' };
  return readingOf(name, units);
}

/** A heading is whatever somebody typed, "constructor" too: only what the table itself names counts. */
const named = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;

/** In small letters, without the marks that tell a heading where it may break, and with one space for any. */
const plainHeading = (heading: string): string =>
  heading
    .replace(/\u00ad/g, '')
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')
    .trim();

/** "tilt time s", "tilt time, s", "tilt time (s)" and "tilt time". */
function readingOf(name: string, units: PageUnits): Column | null {
  const bare = named(READINGS, name);
  if (bare) return { holds: 'reading', field: bare, fromFile: inPageUnits(bare, units) };
  const [, start = '', unit = ''] = /^(.+?)(?:,\s*|\s+|\s*[([]\s*)([^\s,()[\]]+)[)\]]?$/.exec(name) ?? [];
  const field = named(READINGS, start);
  const fromFile = field && named(UNITS[field], unit);
  return fromFile ? { holds: 'reading', field, fromFile } : null;
}

function inPageUnits(field: ReadingField, units: PageUnits): (shown: number) => number {
  if (field === 'mass') return mass[units.mass];
  if (field === 'startAngle') return fromDegrees;
  return field === 'tiltTime' ? same : temperature[units.temperature];
}
