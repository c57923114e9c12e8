import { bold, plain, type Sentence } from '../sentence';
import { MESH_SPREAD } from '../speedCall';
import { capital, fixed, percentNumber, percentText } from '../wording';
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
      plain(' No castings are written down for a pour that has this figure.'),
    ];
  const what = counted === 'any' ? 'scrap' : `scrap by ${nameOf(counted)}`;
  if (groups.length === 1) {
    const range = `${rateWords(least)}, all of one pour.`;
    return [
      bold('One pour is no comparison.'),
      plain(
        ` ${capital(what)}: ${range} Log castings of a second pour too, one with a different prediction.`,
      ),
    ];
  }
  const both = `${capital(what)}: “${least.name}”, ${figureText(least.predicted, against)}, ${rateWords(least)}; “${most.name}”, ${figureText(most.predicted, against)}, ${rateWords(most)}.`;
  if (isAlike(least, most, against)) {
    const far = against === 'lap margin' && areFar(least, most, against);
    const why = far ? ' Both are far from any lap, and the prediction expects none of either.' : '';
    return [
      bold('The predictions do not differ enough.'),
      plain(` ${both}${why} A difference between these pours would not speak for or against the prediction.`),
    ];
  }
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

export const rateWords = ({ bad, total, from, to }: ScrapGroup): string =>
  `${bad} of ${total} (${percentNumber(from)} to ${percentText(to)})`;

export const figureText = (value: number, against: PredictedFigure): string =>
  against === 'front speed' ? `${fixed(value, 2)} times critical` : `${fixed(value, 2)} s of lap margin`;

/**
 * How near two lap margins must be to be one answer: half a second, as for a pour told to be close to freezing, or a
 * fifth of the longer. A margin goes with the time to freeze, and coat and die are not known to a fifth. Ours, no source.
 */
const SAME_MARGIN = { seconds: 0.5, share: 0.2 } as const;

/** Beyond these a pour is so far from its limit that the prediction expects no such fault at all. Ours, no source. */
const FAR = { margin: 2, slow: 0.5, quick: 2 } as const;

function areFar(a: ScrapGroup, b: ScrapGroup, against: PredictedFigure): boolean {
  const [low, high] = [Math.min(a.predicted, b.predicted), Math.max(a.predicted, b.predicted)];
  return against === 'lap margin' ? low >= FAR.margin : high <= FAR.slow || low >= FAR.quick;
}

/** Predicted figures that what is not known, or the mesh alone, could make differ. */
function isAlike(a: ScrapGroup, b: ScrapGroup, against: PredictedFigure): boolean {
  const apart = Math.abs(a.predicted - b.predicted);
  if (against === 'front speed') return apart <= MESH_SPREAD * Math.max(a.predicted, b.predicted);
  const longer = Math.max(Math.abs(a.predicted), Math.abs(b.predicted));
  return areFar(a, b, against) || apart <= Math.max(SAME_MARGIN.seconds, SAME_MARGIN.share * longer);
}

/** The figure to cast next: between the two, and where one is far from any lap, nearer to the lap. */
function nextBetween(a: ScrapGroup, b: ScrapGroup, against: PredictedFigure): number {
  const near = ({ predicted }: ScrapGroup): number =>
    against === 'lap margin' ? Math.min(predicted, FAR.margin) : predicted;
  return (near(a) + near(b)) / 2;
}

/** Where only the two ends were cast, that nothing is known between them, and what to cast next; empty otherwise. */
function betweenWords(
  groups: readonly ScrapGroup[],
  least: ScrapGroup,
  most: ScrapGroup,
  against: PredictedFigure,
): string {
  if (areFar(least, most, against)) return '';
  if (groups.some((one) => !isAlike(one, least, against) && !isAlike(one, most, against))) return '';
  const next = figureText(nextBetween(least, most, against), against);
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
  const [first, second] = [a.total * times, b.total * times];
  const many = first === second ? `${first} castings of each` : `${first} and ${second} castings`;
  return `If the rates stayed as they are, about ${many} would tell them apart.`;
}
