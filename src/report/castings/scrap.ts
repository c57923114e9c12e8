import { type CastingRow, type CountedFault, castingsIn, countedBad, type PredictedFigure } from './casting';
import { type RateRange, wilson } from './wilson';

/** What the book predicts of one pour. */
export interface PredictedPour {
  readonly id: string;
  readonly name: string;
  /** Peak front speed over critical speed; null when no front ran in the die. */
  readonly frontSpeed: number | null;
  /** Seconds left before the coldest place laps, negative when it does; null when heat was not computed or nothing comes near. */
  readonly lapMargin: number | null;
}

/** The castings of one pour against its predicted figure. */
export interface ScrapGroup extends RateRange {
  readonly pour: string;
  readonly name: string;
  readonly predicted: number;
  readonly bad: number;
  readonly total: number;
}

/** Predicted figure of that kind; null when the pour has none. */
export const predictedOf = (pour: PredictedPour, against: PredictedFigure): number | null =>
  against === 'front speed' ? pour.frontSpeed : pour.lapMargin;

/**
 * Castings by pour, the pour predicted to be least at risk first: the slowest front, or the longest margin. Rows without
 * a pour, and pours without that figure, are left out.
 */
export function scrapGroups(
  castings: readonly CastingRow[],
  counted: CountedFault,
  against: PredictedFigure,
  predicted: readonly PredictedPour[],
): ScrapGroup[] {
  const risk = against === 'front speed' ? 1 : -1;
  return predicted
    .flatMap((pour): ScrapGroup[] => {
      const rows = castings.filter((row) => row.pour === pour.id);
      const figure = predictedOf(pour, against);
      const total = rows.reduce((sum, row) => sum + castingsIn(row), 0);
      if (figure === null || total === 0) return [];
      const bad = rows.reduce((sum, row) => sum + countedBad(row, counted), 0);
      return [{ pour: pour.id, name: pour.name, predicted: figure, bad, total, ...wilson(bad, total) }];
    })
    .sort((a, b) => risk * (a.predicted - b.predicted));
}

/** Castings in the log that stand in no group. */
export function leftOut(castings: readonly CastingRow[], groups: readonly ScrapGroup[]): number {
  const shown = new Set(groups.map(({ pour }) => pour));
  return castings
    .filter(({ pour }) => pour === null || !shown.has(pour))
    .reduce((sum, row) => sum + castingsIn(row), 0);
}
