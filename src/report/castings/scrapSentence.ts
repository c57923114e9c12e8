import { bold, plain, type Sentence } from '../sentence';
import { MESH_SPREAD } from '../speedCall';
import { fixed, percentNumber, percentText } from '../wording';
import { type CountedFault, FAULTS, type PredictedFigure } from './casting';
import type { ScrapGroup } from './scrap';
import { overlap, wilson } from './wilson';

/** Said under every answer, so that nobody need guess what it rests on. */
export const SCRAP_RULE =
  'Ranges are 95 % Wilson score intervals. Of all pours only the two at the ends of the prediction are compared, and two rates whose ranges overlap cannot be told apart. Rates that differ go together with the prediction or against it; whatever else differed between the pours may be the cause.';

/** What the castings say of the prediction, and how sure that is. */
export function scrapSentence(
  groups: readonly ScrapGroup[],
  counted: CountedFault,
  against: PredictedFigure,
): Sentence {
  const [least, most] = [groups[0], groups.at(-1)];
  if (!least || !most)
    return [
      bold('Nothing to set side by side yet.'),
      plain(' No row belongs to a pour that has this figure.'),
    ];
  const what = counted === 'any' ? 'scrap' : `scrap by ${nameOf(counted)}`;
  if (groups.length === 1) {
    const range = `${rateWords(least)}, all of one pour.`;
    return [
      bold('One pour is no comparison.'),
      plain(` ${capital(what)}: ${range} It takes castings of a second pour, predicted to differ.`),
    ];
  }
  const both = `${capital(what)}: “${least.name}”, ${figureText(least.predicted, against)}, ${rateWords(least)}; “${most.name}”, ${figureText(most.predicted, against)}, ${rateWords(most)}.`;
  if (isAlike(least, most, against))
    return [
      bold('The predictions do not differ enough.'),
      plain(` ${both} A difference between these pours would not speak for or against the prediction.`),
    ];
  const between = betweenWords(groups, least, most, against);
  if (overlap(least, most))
    return [bold('Cannot be told apart.'), plain(` ${both} ${moreWords(least, most)}${between}`)];
  return most.rate > least.rate
    ? [bold('Scrap goes with the prediction.'), plain(` ${both} The ranges do not overlap.${between}`)]
    : [
        bold('Scrap goes against the prediction.'),
        plain(` ${both} The ranges do not overlap: something else decides these castings.${between}`),
      ];
}

const nameOf = (counted: CountedFault): string =>
  FAULTS.find(({ fault }) => fault === counted)?.name ?? 'any fault';
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const rateWords = ({ bad, total, from, to }: ScrapGroup): string =>
  `${bad} of ${total} (${percentNumber(from)} to ${percentText(to)})`;

export const figureText = (value: number, against: PredictedFigure): string =>
  against === 'front speed' ? `${fixed(value, 2)} times critical` : `${fixed(value, 2)} s of lap margin`;

/** Seconds of margin that are the same answer. */
const SAME_MARGIN = 0.05;

/** Predicted figures that the mesh alone could make differ. */
function isAlike(a: ScrapGroup, b: ScrapGroup, against: PredictedFigure): boolean {
  const apart = Math.abs(a.predicted - b.predicted);
  return against === 'lap margin'
    ? apart <= SAME_MARGIN
    : apart <= MESH_SPREAD * Math.max(a.predicted, b.predicted);
}

/** Where only the two ends were cast, that nothing is known between them, and what to cast next; empty otherwise. */
function betweenWords(
  groups: readonly ScrapGroup[],
  least: ScrapGroup,
  most: ScrapGroup,
  against: PredictedFigure,
): string {
  if (groups.some((one) => !isAlike(one, least, against) && !isAlike(one, most, against))) return '';
  const next = figureText((least.predicted + most.predicted) / 2, against);
  return ` Nothing was cast between these two predictions, so this log cannot say where between them a limit lies: cast a pour predicted at about ${next} next.`;
}

const MOST_TIMES = 1000;

/**
 * How many times as many castings of each pour would tell the two apart if the rates stayed as they are; null when not
 * even a thousand times as many would.
 */
export function timesAsMany(a: ScrapGroup, b: ScrapGroup): number | null {
  const apart = (times: number): boolean =>
    !overlap(wilson(a.bad * times, a.total * times), wilson(b.bad * times, b.total * times));
  if (!apart(MOST_TIMES)) return null;
  let [low, high] = [1, MOST_TIMES];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (apart(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function moreWords(a: ScrapGroup, b: ScrapGroup): string {
  const times = timesAsMany(a, b);
  if (times === null) return 'The rates are so alike that more castings would hardly tell them apart.';
  return `If the rates stayed as they are, about ${a.total * times} and ${b.total * times} castings would tell them apart.`;
}
