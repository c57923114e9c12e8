import type { PourRecord } from '$src/core/pour/record';
import { toCelsius, toDegrees, toMillimetres } from '$src/core/units';
import { borderlineCount, type FigureRow, figureRows, foldCount } from './figures';
import { dieLength } from './series';
import { angleText, countText, fixed, listText, secondsNumber } from './wording';

/** A figure worth showing large, with one line on what it means. */
export interface KeyFigure extends FigureRow {
  readonly note: string;
}

function firstFlowNote({ figures, band }: PourRecord): string {
  const flow = figures.firstFlow;
  if (flow.kind !== 'angle') return '';
  const way = toDegrees(flow.inclination) >= 0 ? 'uphill: it rolls in' : 'downhill: it runs';
  const notes = [
    way,
    band?.gateOff.firstFlow.kind === 'angle'
      ? `${angleText(band.gateOff.firstFlow.inclination)} without stand`
      : '',
  ];
  return notes.filter((note) => note !== '').join('; ');
}

function peakNote({ figures, plan }: PourRecord): string {
  const { peakFrontSpeed: peak, peakFrontSpeedPlace: place } = figures;
  if (peak === null) return '';
  const at = place === null ? '' : `, at ${fixed(toMillimetres(place), 0)} mm`;
  return `${fixed(peak / plan.liquid.criticalSpeed, 1)} × critical${at}`;
}

function overNote(record: PourRecord): string {
  const share = record.figures.shareAboveCritical;
  const length = toMillimetres(dieLength(record));
  return share === null ? '' : `${fixed(share * length, 0)} of ${fixed(length, 0)} mm`;
}

function spanNote({ figures }: PourRecord): string {
  const { firstFlowTime, arrivalTime } = figures;
  if (arrivalTime === null) return '';
  return firstFlowTime === null
    ? `there at ${secondsNumber(arrivalTime)} s`
    : `from ${secondsNumber(firstFlowTime)} to ${secondsNumber(arrivalTime)} s`;
}

function fillNote({ figures }: PourRecord): string {
  if (figures.filledTime !== null) return `full at ${secondsNumber(figures.filledTime)} s`;
  return `${fixed(figures.finalShare * 100, 0)} % full at the end`;
}

function foldNote(record: PourRecord): string {
  const sizes = (['heavy', 'marked', 'slight'] as const).filter((size) => foldCount(record, size) > 0);
  if (sizes.length === 0)
    return record.figures.skinFolded > 0 ? 'too little at any place to count as a fold' : 'no fold';
  const counts = sizes.map((size) => `${foldCount(record, size)} ${size}`);
  const borderline = borderlineCount(record);
  const all = `${countText(record.folds.length, 'fold')}: ${listText(counts)}`;
  return borderline > 0 ? `${all}; ${borderline === 1 ? 'one is' : `${borderline} are`} borderline` : all;
}

function frontNote({ plan }: PourRecord): string {
  return plan.heat ? `tilt begins at ${fixed(toCelsius(plan.heat.startTemperature), 0)} °C` : '';
}

function marginNote({ figures }: PourRecord): string {
  const { lap } = figures;
  if (!lap || !Number.isFinite(lap.margin)) return 'no place near freezing';
  return lap.margin < 0 ? 'too late at its slowest place' : 'at the place nearest to it';
}

const NOTES: Readonly<Record<string, (record: PourRecord) => string>> = {
  first_flow_deg: firstFlowNote,
  peak_front_speed_m_per_s: peakNote,
  share_above_critical_percent: overNote,
  mouth_to_end_s: spanNote,
  fill_time_s: fillNote,
  arriving_temperature_C: frontNote,
  lap_margin_s: marginNote,
  skin_folded_mm: foldNote,
};

/** The figures of a pour's row, in the order they are read; those of heat only where it was computed. */
export function keyFigures(record: PourRecord): KeyFigure[] {
  const rows = figureRows(record);
  return Object.entries(NOTES).flatMap(([key, note]) => {
    const row = rows.find((each) => each.key === key);
    return row ? [{ ...row, note: note(record) }] : [];
  });
}
