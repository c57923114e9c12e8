import type { Figures, FirstFlow, FoldSize, PourRecord } from '$src/core/pour/record';
import type { Section } from '$src/core/section/section';
import { toCelsius, toCubicCentimetres, toDegrees, toMillimetres } from '$src/core/units';
import { coldOf } from './coldOf';
import { FIRST_FLOW_SPREAD } from './firstFlowSpread';
import { gasHeld } from './gasHeld';
import { angleText, fixed, percentNumber, secondsNumber, signedDegrees, significant } from './wording';

/** One figure of a pour, ready for the page, the command line's table and its JSON. */
export interface FigureRow {
  /** Name with its unit, as in files: `peak_front_speed_m_per_s`. */
  readonly key: string;
  readonly label: string;
  /** In `unit`, unrounded; null where the pour did not get there. */
  readonly value: number | null;
  /** Empty for counts. */
  readonly unit: string;
  /** For people, without the unit unless it is a degree sign; words where there is no value. */
  readonly text: string;
  /** What the mesh moves it by, in `unit`: a smaller difference is no finding. Absent where that is not told so. */
  readonly spread?: number;
}

const row = (
  key: string,
  label: string,
  unit: string,
  value: number | null,
  show: (value: number) => string,
  missing: string,
): FigureRow => ({ key, label, unit, value, text: value === null ? missing : show(value) });

/** A first flow in words: an angle, already in the die while ladling, or never. */
export function firstFlowText(flow: FirstFlow): string {
  if (flow.kind === 'angle') return angleText(flow.inclination);
  return flow.kind === 'never' ? 'never' : 'already in the die while ladling';
}

const firstFlowDegrees = (flow: FirstFlow): number | null =>
  flow.kind === 'angle' ? toDegrees(flow.inclination) : null;

const speed = (value: number): string => fixed(value, 2);
/** A drop left over by rounding is nothing to anyone at the bench. */
const amount = (value: number): string => (Math.abs(value) < 0.05 ? '0' : significant(value));
const scaled = (value: number | null, convert: (value: number) => number): number | null =>
  value === null ? null : convert(value);
const percent = (share: number): number => share * 100;
const percentShown = (value: number): string => percentNumber(value / 100);

/** From first passing the mouth to the end wall [s]; null unless both happened during the tilt. */
export function mouthToEnd(figures: Figures): number | null {
  if (figures.firstFlow.kind === 'already in the die') return null;
  if (figures.arrivalTime === null || figures.firstFlowTime === null) return null;
  return figures.arrivalTime - figures.firstFlowTime;
}

/** How many folds of one size. */
export const foldCount = (record: PourRecord, size: FoldSize): number =>
  record.folds.filter((fold) => fold.size === size).length;

/** How many folds another mesh may not show. */
export const borderlineCount = (record: PourRecord): number =>
  record.folds.filter(({ isClear }) => !isClear).length;

function motionRows(figures: Figures, _section: Section): FigureRow[] {
  const neverIn = figures.firstFlow.kind === 'never' ? 'never in the die' : 'too short a run';
  const seconds = (key: string, label: string, value: number | null, missing: string) =>
    row(key, label, 's', value, secondsNumber, missing);
  return [
    {
      key: 'first_flow_deg',
      label: 'first flow',
      unit: '°',
      value: firstFlowDegrees(figures.firstFlow),
      text: firstFlowText(figures.firstFlow),
      spread: toDegrees(FIRST_FLOW_SPREAD),
    },
    seconds(
      'first_flow_time_s',
      'first flow at',
      figures.firstFlow.kind === 'already in the die' ? null : figures.firstFlowTime,
      firstFlowText(figures.firstFlow),
    ),
    row('peak_front_speed_m_per_s', 'front speed, peak', 'm/s', figures.peakFrontSpeed, speed, neverIn),
    row(
      'peak_front_speed_place_mm',
      'place of the peak',
      'mm',
      scaled(figures.peakFrontSpeedPlace, toMillimetres),
      (mm) => fixed(mm, 0),
      neverIn,
    ),
    seconds('peak_front_speed_time_s', 'time of the peak', figures.peakFrontSpeedTime, neverIn),
    row(
      'peak_front_speed_inclination_deg',
      'inclination at the peak',
      '°',
      scaled(figures.peakFrontSpeedInclination, toDegrees),
      signedDegrees,
      neverIn,
    ),
    row(
      'share_above_critical_percent',
      'path over critical',
      '%',
      scaled(figures.shareAboveCritical, percent),
      percentShown,
      neverIn,
    ),
    seconds(
      'arrival_time_s',
      'front at the end wall',
      figures.arrivalTime,
      figures.stoodAtEnd ? WHILE_LADLING : 'not reached',
    ),
    seconds('mouth_to_end_s', 'mouth to end', mouthToEnd(figures), mouthToEndMissing(figures)),
  ];
}

/** The ladle's own stream is not modelled. */
const WHILE_LADLING = 'not computed: while ladling';

function mouthToEndMissing(figures: Figures): string {
  if (figures.firstFlow.kind === 'already in the die') return WHILE_LADLING;
  return 'end not reached';
}

function fillRows(figures: Figures): FigureRow[] {
  const missing = gasHeld({ figures }) ? 'not reached: gas held' : 'not filled';
  const seconds = (key: string, label: string, value: number | null) =>
    row(key, label, 's', value, secondsNumber, missing);
  return [
    seconds('filled_50_time_s', 'half full', figures.filled50Time),
    seconds('filled_90_time_s', '90 % full', figures.filled90Time),
    seconds('filled_time_s', 'filled', figures.filledTime),
    seconds('fill_time_s', 'fill time', figures.fillTime),
    row('final_share_percent', 'filled at the end', '%', percent(figures.finalShare), percentShown, ''),
    row('spilled_cm3', 'metal spilled', 'cm³', toCubicCentimetres(figures.spilled), amount, ''),
    row('skin_folded_mm', 'folded skin', 'mm', toMillimetres(figures.skinFolded), significant, ''),
  ];
}

/** Cold metal: how warm the front arrived and how long the place nearest to freezing had left. */
function heatRows(record: PourRecord): FigureRow[] {
  const { lap, arrivingTemperature } = record.figures;
  if (lap === null) return [];
  const missing = coldOf(record) === 'misrun' ? 'misrun' : 'end not reached';
  return [
    row(
      'arriving_temperature_C',
      'front temperature, end wall',
      '°C',
      arrivingTemperature === null ? null : toCelsius(arrivingTemperature),
      (value) => value.toFixed(0),
      missing,
    ),
    row(
      'lap_margin_s',
      'left before freezing',
      's',
      Number.isFinite(lap.margin) ? lap.margin : null,
      secondsNumber,
      'nowhere near',
    ),
  ];
}

function foldRows(record: PourRecord): FigureRow[] {
  const count = (key: string, label: string, value: number) => row(key, label, '', value, String, '');
  return [
    count('folds', 'folds', record.folds.length),
    count('folds_heavy', 'folds, heavy', foldCount(record, 'heavy')),
    count('folds_marked', 'folds, marked', foldCount(record, 'marked')),
    count('folds_slight', 'folds, slight', foldCount(record, 'slight')),
    count('folds_borderline', 'folds, borderline', borderlineCount(record)),
    row('fold_score', 'fold score', '', record.figures.foldScore, significant, ''),
  ];
}

/** The ends of what is assumed about the capillary stand; "not computed" in previews and stopped runs. */
function bandRows(record: PourRecord): FigureRow[] {
  const ends = [
    ['without_stand', 'without capillary stand', record.band?.gateOff],
    ['non_wetting', 'contact angle 180°', record.band?.nonWetting],
  ] as const;
  return ends.flatMap(([key, label, end]) => [
    {
      key: `first_flow_${key}_deg`,
      label: `first flow, ${label}`,
      unit: '°',
      value: end ? firstFlowDegrees(end.firstFlow) : null,
      text: end ? firstFlowText(end.firstFlow) : 'not computed',
    },
    row(
      `peak_front_speed_${key}_m_per_s`,
      `front speed, peak, ${label}`,
      'm/s',
      end?.peakFrontSpeed ?? null,
      speed,
      end ? 'never in the die' : 'not computed',
    ),
  ]);
}

/** One figure of several pours. */
export interface FigureOfPours {
  readonly key: string;
  readonly label: string;
  /** One for each pour, in order; words where a pour has no such figure. */
  readonly figures: readonly FigureRow[];
}

/** Figures of several pours beside each other by what they are: a pour without heat has fewer than one with it. */
export function figuresOfPours(columns: readonly (readonly FigureRow[])[]): FigureOfPours[] {
  const longest = columns.reduce((most, column) => (column.length > most.length ? column : most));
  return longest.map(({ key, label, unit }) => {
    const missing: FigureRow = { key, label, unit, value: null, text: 'not computed' };
    return { key, label, figures: columns.map((rows) => rows.find((one) => one.key === key) ?? missing) };
  });
}

/** Every figure of a pour in an order that is always the same; those of heat only where heat was computed. */
export function figureRows(record: PourRecord): FigureRow[] {
  return [
    ...motionRows(record.figures, record.plan.section),
    ...fillRows(record.figures),
    ...heatRows(record),
    ...foldRows(record),
    ...bandRows(record),
  ];
}

/** Text with its unit, for a sentence or a table cell: "0.81 m/s", "−12.1°", "not filled". */
export function figureWithUnit(figure: FigureRow): string {
  if (figure.value === null || figure.unit === '' || figure.unit === '°') return figure.text;
  return `${figure.text} ${figure.unit}`;
}
