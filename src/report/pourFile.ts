import { csvFormatRows } from 'd3';
import type { PourRecord } from '$src/core/pour/record';
import { METRIC, type PageUnits, toCubicCentimetres, toDegrees, toMillimetres } from '$src/core/units';
import { isBrimful } from './brimful';
import { cureFor } from './cureFor';
import { figureRows, firstFlowText } from './figures';
import { frontLedJson } from './frontLedFile';
import { inDigits } from './inDigits';
import { machineJson } from './machineFall';
import { plainText } from './sentence';
import type { Curve } from './series';
import { columnsIn } from './seriesIn';
import { verdict } from './verdict';

const list = (values: ArrayLike<number>, convert: (value: number) => number = (value) => value): number[] =>
  Array.from(values, convert);

/** Series of a pour with units in the names. */
function seriesColumns({ series }: PourRecord): Record<string, number[]> {
  return {
    time_s: list(series.time),
    inclination_deg: list(series.inclination, toDegrees),
    front_mm: list(series.front, toMillimetres),
    filled_share: list(series.filledShare),
    spilled_cm3: list(series.spilled, toCubicCentimetres),
    skin_folded_mm: list(series.skinFolded, toMillimetres),
  };
}

function frontSpeedColumns({ frontSpeeds }: PourRecord): Record<string, number[]> {
  return {
    place_mm: list(frontSpeeds.place, toMillimetres),
    speed_m_per_s: list(frontSpeeds.speed),
    time_s: list(frontSpeeds.time),
    inclination_deg: list(frontSpeeds.inclination, toDegrees),
    depth_mm: list(frontSpeeds.depth, toMillimetres),
  };
}

/** A pour as plain data for a JSON file: figures with units in their names, folds, series. Fields of the mesh stay out. */
export function pourJson(name: string, record: PourRecord) {
  return {
    name,
    solver: record.solver,
    plan_hash: record.planHash,
    outcome: record.outcome,
    verdict: plainText(verdict(record).sentence),
    first_flow: firstFlowText(record.figures.firstFlow),
    figures: Object.fromEntries(figureRows(record).map(({ key, value }) => [key, value])),
    ...frontLedJson(record),
    ...machineJson(record),
    folds: record.folds.map((fold) => ({
      kind: fold.kind,
      size: fold.size,
      borderline: !fold.isClear,
      time_s: fold.time,
      inclination_deg: toDegrees(fold.inclination),
      place_mm: toMillimetres(fold.place),
      severity: fold.severity,
      details: fold.details,
      cause: fold.cause,
      cure: cureFor(fold, record.plan.tilt, isBrimful(record.plan)),
    })),
    series: seriesColumns(record),
    front_speed: frontSpeedColumns(record),
  };
}

const cell = (value: number | undefined): string =>
  value === undefined || Number.isNaN(value) ? '' : String(inDigits(value));

/** Columns side by side as CSV with one heading row; shorter columns end in empty fields. */
export function columnsCsv(columns: Readonly<Record<string, readonly number[]>>): string {
  const names = Object.keys(columns);
  const rows = Math.max(0, ...names.map((name) => columns[name]!.length));
  const body = Array.from({ length: rows }, (_, index) => names.map((name) => cell(columns[name]![index])));
  return `${csvFormatRows([names, ...body])}\n`;
}

/** The time series of a pour as CSV. */
export const seriesCsv = (record: PourRecord, units: PageUnits = METRIC): string =>
  columnsCsv(columnsIn(seriesColumns(record), units));

/** Front speed by place as CSV. */
export const frontSpeedCsv = (record: PourRecord, units: PageUnits = METRIC): string =>
  columnsCsv(columnsIn(frontSpeedColumns(record), units));

/** Curves of one chart as CSV: an x and a y column for each, since every curve has its own points. */
export function curvesCsv(
  curves: readonly { readonly name: string; readonly curve: Curve }[],
  xName: string,
  yName: string,
): string {
  return columnsCsv(
    Object.fromEntries(
      curves.flatMap(({ name, curve }) => [
        [`${name}: ${xName}`, curve.x],
        [`${name}: ${yName}`, curve.y],
      ]),
    ),
  );
}
