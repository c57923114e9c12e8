import { csvFormatRows } from 'd3';
import { METRIC, type PageUnits, toCubicCentimetres } from '$src/core/units';
import { inDigits } from '../inDigits';
import { feederText } from './feeders';
import { axisValue, type Grid, gridOf, placeOf } from './grid';
import { endFigure, type PointFigures } from './pointFigures';
import { shownQuantity } from './quantities';
import { type PointResult, regionOf } from './region';
import { regionWords } from './regionWords';
import type { SettingQuantity } from './setting';
import type { StudyAxis } from './study';

/** An axis with all that a file must say of it. */
export interface NamedAxis extends StudyAxis {
  readonly name: string;
  readonly quantity: SettingQuantity;
  /** What the pour itself is set to [SI]; null when it has no such value. */
  readonly setPoint: number | null;
}

/** What a study is, without its results: two files belong to one study when their heads are the same. */
export interface StudyHead {
  readonly book: string;
  readonly casting: string;
  readonly cell: string;
  readonly pour: string;
  readonly solver: string;
  /** Of the pour as it is set, on the mesh of the study. */
  readonly planHash: string;
  readonly meshCells: number;
  readonly axes: readonly NamedAxis[];
}

export type StudyResults = ReadonlyMap<number, PointResult>;

const FIGURES = [
  ['first_flow_deg', 'firstFlow', 'angle'],
  ['share_at_start', 'shareAtStart', null],
  ['peak_front_speed_m_per_s', 'peakFrontSpeed', null],
  ['critical_speed_m_per_s', 'criticalSpeed', null],
  ['share_above_critical', 'shareAboveCritical', null],
  ['arrival_time_s', 'arrivalTime', null],
  ['filled_time_s', 'filledTime', null],
  ['fill_time_s', 'fillTime', null],
  ['final_share', 'finalShare', null],
  ['skin_folded_mm', 'skinFolded', 'length'],
  ['fold_score', 'foldScore', null],
  ['folds', 'folds', null],
] as const satisfies readonly (readonly [string, keyof PointFigures, SettingQuantity | null])[];

/** What is empty beside them is known only at the end. */
const POURED_TO = { end: 'its end', full: 'the full die', stiff: 'its stiff front' } as const;

function toldOf(figures: PointFigures, field: (typeof FIGURES)[number][1]): number | null {
  const isOfEnd =
    field === 'finalShare' || field === 'skinFolded' || field === 'foldScore' || field === 'folds';
  return isOfEnd ? endFigure(figures, field) : figures[field];
}

/** One point as a row of plain values, names carry units; always the same names in the same order. */
function rowOf(
  head: StudyHead,
  grid: Grid,
  point: number,
  result: PointResult | undefined,
  units: PageUnits,
): [string, unknown][] {
  const place = placeOf(grid, point);
  const values = head.axes.map((axis, at): [string, unknown] => {
    const { key, toShown } = shownQuantity(axis.quantity, units);
    return [nameWithUnit(axis.name, key), inDigits(toShown(axisValue(axis, place[at]!)))];
  });
  const figures = result && 'figures' in result ? result.figures : null;
  const shown = FIGURES.map(([name, field, quantity]): [string, unknown] => {
    const value = figures && toldOf(figures, field);
    if (!quantity) return [name, inDigits(value)];
    const { key, toShown } = shownQuantity(quantity, units);
    return [name.replace(/mm$/, key), value === null ? null : inDigits(toShown(value))];
  });
  return [
    ['point', point],
    ...values,
    ['verdict', regionWords(result ? regionOf(result) : 'not computed')],
    ['feeder', result ? feederText(result) : null],
    ['poured_to', figures ? POURED_TO[figures.cut ?? 'end'] : null],
    ['loudest_fold', figures?.cause ?? null],
    ['lap', figures?.lap?.kind ?? null],
    ['lap_margin_s', inDigits(figures?.lap?.margin ?? null)],
    ...shown,
    ['spilled_cm3', figures?.spill ? inDigits(toCubicCentimetres(figures.spill.volume)) : null],
    [
      'why_not',
      result && !('figures' in result) ? ('refused' in result ? result.refused.reason : result.failed) : null,
    ],
  ];
}

const nameWithUnit = (name: string, key: string): string =>
  `${name.replace(/[^A-Za-z0-9]+/g, '_').replace(/_$/, '')}${key ? `_${key}` : ''}`;

function rowsOf(head: StudyHead, results: StudyResults, units: PageUnits): [string, unknown][][] {
  const grid = gridOf(head);
  return Array.from({ length: grid.count }, (_, point) =>
    rowOf(head, grid, point, results.get(point), units),
  );
}

/** The study as a table, one line for each point. */
export function studyCsv(head: StudyHead, results: StudyResults, units: PageUnits = METRIC): string {
  const rows = rowsOf(head, results, units);
  const names = rows[0]!.map(([name]) => name);
  const lines = [names, ...rows.map((row) => row.map(([, value]) => (value === null ? '' : String(value))))];
  return `${csvFormatRows(lines)}\n`;
}

/** The study as JSON: its head, then one object for each point. */
export function studyJson(head: StudyHead, results: StudyResults): string {
  const points = rowsOf(head, results, METRIC).map((row) => Object.fromEntries(row));
  return `${JSON.stringify({ format: 'pourstudy', ...head, points }, null, 1)}\n`;
}
