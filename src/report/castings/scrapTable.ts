import { percentNumber, percentText } from '../wording';
import { type CountedFault, FAULTS, type PredictedFigure } from './casting';
import type { ScrapGroup } from './scrap';
import { figureText } from './scrapSentence';

/** The castings by pour in words: what was cast and nothing between. A line break parts a figure from what stands smaller below it. */
export interface ScrapTable {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One row for each pour that was cast, with its count, its share of bad castings and the range of that share. */
export function scrapTable(
  groups: readonly ScrapGroup[],
  counted: CountedFault,
  against: PredictedFigure,
): ScrapTable {
  const fault = FAULTS.find((one) => one.fault === counted)?.name ?? 'any fault';
  return {
    caption: `Castings with ${fault} against the predicted ${against}`,
    heads: ['pour', 'predicted', 'bad', 'share', 'range, 95 %'],
    rows: groups.map(({ name, predicted, bad, total, rate, from, to }) => [
      name,
      figureText(predicted, against),
      `${bad} of ${total}`,
      percentText(rate),
      `${percentNumber(from)} to ${percentText(to)}`,
    ]),
  };
}
