import { LENGTH, METRIC, type PageUnits, SPEED, toDegrees } from '$src/core/units';
import { signedDegrees, significant } from '../wording';
import { axisValue } from './grid';
import type { PointFigures } from './pointFigures';
import { shownQuantity, shownValue } from './quantities';
import type { PointResult } from './region';
import type { CurveFigure } from './study';
import type { NamedAxis, StudyResults } from './studyFile';

interface ShownFigure {
  readonly name: string;
  readonly unit: string;
  readonly read: (figures: PointFigures) => number | null;
}

const percent = (share: number | null): number | null => (share === null ? null : share * 100);

type Measured = 'peakFrontSpeed' | 'skinFolded';

const SHOWN: Readonly<Record<Exclude<CurveFigure, Measured>, ShownFigure>> = {
  firstFlow: {
    name: 'first flow',
    unit: '°',
    read: ({ firstFlow }) => (firstFlow === null ? null : toDegrees(firstFlow)),
  },
  fillTime: { name: 'fill time', unit: 's', read: (figures) => figures.fillTime },
  arrivalTime: { name: 'front at the end wall', unit: 's', read: (figures) => figures.arrivalTime },
  finalShare: { name: 'filled at the end', unit: '%', read: (figures) => percent(figures.finalShare) },
  shareAboveCritical: {
    name: 'path over critical',
    unit: '%',
    read: (figures) => percent(figures.shareAboveCritical),
  },
};

function shownFigure(figure: CurveFigure, units: PageUnits): ShownFigure {
  if (figure === 'skinFolded') {
    const { unit, toShown } = LENGTH[units.length];
    return { name: 'folded skin', unit, read: ({ skinFolded }) => toShown(skinFolded) };
  }
  if (figure !== 'peakFrontSpeed') return SHOWN[figure];
  const { unit, toShown } = SPEED[units.length];
  const read = ({ peakFrontSpeed }: PointFigures): number | null =>
    peakFrontSpeed === null ? null : toShown(peakFrontSpeed);
  return { name: 'front speed, peak', unit, read };
}

/** The figure of a curve of one pour, in the units shown; NaN where that has none. */
export function readFigure(figure: CurveFigure, result: PointResult, units: PageUnits): number {
  return ('figures' in result ? shownFigure(figure, units).read(result.figures) : null) ?? Number.NaN;
}

/** A figure against a setting, in the units shown; NaN breaks the line where there is no such figure. */
export interface StudyCurve {
  readonly name: string;
  readonly unit: string;
  readonly points: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly sentence: string;
}

export function curveOf(
  axis: NamedAxis,
  figure: CurveFigure,
  results: StudyResults,
  units: PageUnits = METRIC,
  isDone = true,
): StudyCurve {
  const { name, unit } = shownFigure(figure, units);
  const points = [...results.keys()].sort((a, b) => a - b);
  const y = points.map((point) => readFigure(figure, results.get(point)!, units));
  const { toShown } = shownQuantity(axis.quantity, units);
  const x = points.map((point) => toShown(axisValue(axis, point)));
  const sentence = sentenceOf(axis, { name, unit }, points, y, units);
  return { name, unit, points, x, y, sentence: isDone ? sentence : soFar(sentence) };
}

/** What may still change, told as such. */
export const soFar = (sentence: string): string =>
  `So far: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;

function sentenceOf(
  axis: NamedAxis,
  { name, unit }: Pick<ShownFigure, 'name' | 'unit'>,
  points: readonly number[],
  y: readonly number[],
  units: PageUnits,
): string {
  const finite = y.filter(Number.isFinite);
  if (finite.length === 0) return `No pour in this range has a ${name}.`;
  const [low, high] = [Math.min(...finite), Math.max(...finite)];
  const at = (value: number) => shownValue(axisValue(axis, points[y.indexOf(value)]!), axis.quantity, units);
  const told = (value: number) => (unit === '°' ? signedDegrees(value, 1) : `${significant(value)} ${unit}`);
  return `From ${told(low)} at ${axis.name} ${at(low)} to ${told(high)} at ${at(high)}.`;
}
