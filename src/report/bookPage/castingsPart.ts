import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { runOtherwise } from '../castings/asRun';
import {
  type CastingRow,
  type CountedFault,
  castingsIn,
  FAULTS,
  type PredictedFigure,
} from '../castings/casting';
import { leftOut, type PredictedPour, type ScrapGroup, scrapGroups } from '../castings/scrap';
import { SCRAP_RULE, scrapSentence } from '../castings/scrapSentence';
import { scrapTable } from '../castings/scrapTable';
import { shownNumber, shownQuantity } from '../study/quantities';
import type { SettingQuantity } from '../study/setting';
import { countText } from '../wording';
import { plainTable } from './table';
import { answer, paragraph } from './words';

/** A pour the log may name. */
export interface LoggedPour {
  readonly id: string;
  readonly name: string;
  /** As it is set now; null while that is not in order. */
  readonly plan: PourPlan | null;
}

/** A castings log with what it is set against. */
export interface CastingsLog {
  readonly castings: readonly CastingRow[];
  readonly counted: CountedFault;
  readonly against: PredictedFigure;
  readonly pours: readonly LoggedPour[];
  /** Of pours whose result belongs to what they are set to now. */
  readonly predicted: readonly PredictedPour[];
}

/** What the castings say of the prediction, and the log itself. */
export function castingsPart(log: CastingsLog, units: PageUnits): string {
  const { castings, counted, against, predicted } = log;
  if (castings.length === 0) return paragraph('No castings are written down yet.', units);
  const groups = scrapGroups(castings, counted, against, predicted);
  const without = leftOut(castings, groups);
  return [
    answer(scrapSentence(groups, counted, against), units),
    groups.length === 0 ? '' : groupTable(groups, log),
    without === 0
      ? ''
      : paragraph(
          `${countText(without, 'casting')} in the log ${without === 1 ? 'is' : 'are'} not counted: no pour, or a pour without this figure or still to be computed.`,
          units,
        ),
    paragraph(SCRAP_RULE, units),
    logTable(log, units),
  ].join('\n');
}

const groupTable = (groups: readonly ScrapGroup[], { counted, against }: CastingsLog): string => {
  const { caption, heads, rows } = scrapTable(groups, counted, against);
  return plainTable({ caption, columns: heads, words: 1, rows });
};

interface Reading {
  readonly field: 'startAngle' | 'tiltTime' | 'mass' | 'metalTemperature' | 'dieTemperature';
  readonly name: string;
  readonly quantity: SettingQuantity;
}

const READINGS: readonly Reading[] = [
  { field: 'startAngle', name: 'start angle', quantity: 'angle' },
  { field: 'tiltTime', name: 'tilt time', quantity: 'time' },
  { field: 'mass', name: 'charge', quantity: 'mass' },
  { field: 'metalTemperature', name: 'metal', quantity: 'temperature' },
  { field: 'dieTemperature', name: 'die', quantity: 'temperature' },
];

/** The rows as written down; a setting that nobody wrote down has no column. */
function logTable({ castings, pours }: CastingsLog, units: PageUnits): string {
  const readings = READINGS.filter(({ field }) => castings.some((row) => row[field] !== null));
  const pourOf = (row: CastingRow): LoggedPour | undefined => pours.find(({ id }) => id === row.pour);
  const rows = castings.map((row) => [
    row.date,
    pourOf(row)?.name ?? 'none',
    row.remark,
    ...readings.map(({ field, quantity }) =>
      row[field] === null ? '' : shownNumber(row[field], quantity, units),
    ),
    String(row.good),
    ...FAULTS.map(({ fault }) => String(row.bad[fault])),
    String(castingsIn(row)),
  ]);
  return plainTable({
    caption: 'Castings poured',
    columns: [
      'date',
      'pour',
      'remark',
      ...readings.map(({ name, quantity }) => `${name}, ${shownQuantity(quantity, units).unit}`),
      'good',
      ...FAULTS.map(({ name }) => name),
      'all',
    ],
    words: 3,
    rows,
    below: strays(castings, pourOf, units),
  });
}

/** How rows stray from their pour, where that can be told. */
function strays(
  castings: readonly CastingRow[],
  pourOf: (row: CastingRow) => LoggedPour | undefined,
  units: PageUnits,
): ReadonlyMap<number, string> {
  const told = castings.flatMap((row, index): [number, string][] => {
    const plan = pourOf(row)?.plan;
    const otherwise = plan ? runOtherwise(row, plan, units) : '';
    if (otherwise === '') return [];
    return [[index, `Run otherwise than its pour: ${otherwise}. The prediction is of the pour.`]];
  });
  return new Map(told);
}
