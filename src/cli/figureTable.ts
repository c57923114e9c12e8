import type { Fold, PourRecord } from '$src/core/pour/record';
import { figureRows, figuresOfPours, figureWithUnit } from '$src/report/figures';
import { foldSizeText } from '$src/report/foldSizeText';
import { frontLedText } from '$src/report/frontLedFile';
import { machineText } from '$src/report/machineFall';
import { plainText } from '$src/report/sentence';
import { verdict } from '$src/report/verdict';
import { angleText, fromMouthText, secondsText } from '$src/report/wording';
import type { ComputedPour } from './computePours';
import { foldMeasure } from './foldMeasure';

/** Pours side by side as text: figures in rows, then each pour's verdict and folds. */
export function figureTable(pours: readonly ComputedPour[]): string {
  const rows = figuresOfPours(pours.map(({ record }) => figureRows(record))).map(({ label, figures }) => [
    label,
    ...figures.map(figureWithUnit),
  ]);
  const head = ['', ...pours.map(({ name }) => name)];
  const outcome = ['outcome', ...pours.map(({ record }) => outcomeText(record))];
  return `${aligned([head, outcome, ...rows])}\n${pours.map(pourText).join('\n')}`;
}

/** How the run ended: of the metal at rest, and not of how quietly it came there. */
const ENDED: Readonly<Partial<Record<PourRecord['outcome']['kind'], string>>> = {
  'filled and quiet': 'full, at rest',
  'quiet, not filled': 'at rest, not full',
};

function outcomeText({ outcome }: PourRecord): string {
  return outcome.kind === 'stopped' ? `stopped: ${outcome.reason}` : (ENDED[outcome.kind] ?? outcome.kind);
}

function pourText({ name, record }: ComputedPour): string {
  const folds = record.folds.map(foldText);
  const list = folds.length > 0 ? aligned(folds, '  ') : '';
  return `${name}: ${plainText(verdict(record).sentence)}\n${frontLedText(record)}${machineText(record)}${list}`;
}

function foldText(fold: Fold): string[] {
  const { kind, time, inclination, place, severity } = fold;
  return [
    foldSizeText(fold),
    kind,
    `at ${secondsText(time)}`,
    angleText(inclination),
    fromMouthText(place),
    foldMeasure(severity),
  ];
}

/** Columns padded to the widest text in each. */
function aligned(rows: readonly (readonly string[])[], indent = ''): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  const line = (row: readonly string[]) => row.map((text, column) => text.padEnd(widths[column]!)).join('  ');
  return rows.map((row) => `${indent}${line(row).trimEnd()}\n`).join('');
}
