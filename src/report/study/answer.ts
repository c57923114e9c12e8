import { METRIC, type PageUnits } from '$src/core/units';
import { bold, plain, type Sentence } from '../sentence';
import { soFar } from './curve';
import { type Feeders, feederWords } from './feeders';
import { coarsePoints } from './grid';
import type { MapAnswer } from './mapAnswer';
import type { Margin } from './margins';
import type { TriedChange } from './openings';
import { shownDistance, shownValue } from './quantities';
import { isPoured, type Region } from './region';
import { faultWords, regionAndFeeder, regionWords } from './regionWords';
import { soundWords } from './soundWords';
import { fedWords, stretchWords } from './stretchWords';
import type { NamedAxis } from './studyFile';

const valueWords = (
  axes: readonly NamedAxis[],
  values: Readonly<Record<string, number>>,
  units: PageUnits,
): string =>
  axes
    .map(({ setting, name, quantity }) => `${name} ${shownValue(values[setting]!, quantity, units)}`)
    .join(', ');

export interface AnswerParts {
  readonly axes: readonly NamedAxis[];
  readonly answer: MapAnswer;
  /** Region at the set point; null when it is not known or not a point of the study. */
  readonly setRegion: Region | null;
  readonly margins: readonly Margin[] | null;
  readonly tried: readonly TriedChange[] | null;
  readonly isDone: boolean;
  /** How far repeats stray on each axis, either way; 0 where that is not known. */
  readonly spreads: readonly number[];
  /** Pours of the first look over the whole range that are computed, and how many it has. */
  readonly firstLook: { readonly computed: number; readonly count: number };
  readonly feeders: Feeders;
}

/** How far the first look is: before it is done a map is one answer spread over everything. */
export function firstLookOf(answer: MapAnswer): AnswerParts['firstLook'] {
  const points = coarsePoints(answer.grid);
  return { computed: points.filter((point) => answer.isComputed[point]).length, count: points.length };
}

/** The study in one sentence, as one would say it at the machine. What may still change is told as so far. */
export function answerSentence(parts: AnswerParts, units: PageUnits = METRIC): Sentence {
  const sentence = wholeSentence(parts, units);
  if (parts.isDone || parts.firstLook.computed < parts.firstLook.count) return sentence;
  const [lead, ...rest] = sentence;
  return [bold(soFar(lead!.text)), ...rest];
}

function wholeSentence(
  { axes, answer, setRegion, margins, tried, spreads, firstLook, feeders }: AnswerParts,
  units: PageUnits,
): Sentence {
  if (firstLook.computed < firstLook.count) {
    const [computed, count] = [firstLook.computed, firstLook.count];
    return [
      bold('Being looked over.'),
      plain(
        ` ${computed} of the first ${count} pours are computed; what this range comes to is said after them.${ofSetting(setRegion, feeders)}`,
      ),
    ];
  }
  const window = axes.length > 1 ? 'window' : 'sound range';
  const told = `${feederWords(feeders)}${fedWords(axes, answer, feeders, units)}`;
  const poured = answer.regions.filter(isPoured).length;
  const soundCount = answer.regions.filter((region) => region === 'sound').length;
  if (poured === 0)
    return [bold('No pour here.'), plain(' Nothing in this range can be poured as it is set.')];
  const isSetSound = setRegion === 'sound';
  if (soundCount === 0 && !(isSetSound && holdsSetPoint(axes))) {
    const found = tried?.some(({ soundAt }) => soundAt !== null);
    const next =
      tried === null
        ? ''
        : found
          ? ' A change below opens it.'
          : ' None of the changes tried opens it; another kind of tilt was not tried.';
    const besides = isSetSound ? ofSetting(setRegion, feeders) : '';
    const nearest = stretchWords(axes, answer, 'near the limit', units);
    if (nearest !== '')
      return [
        bold(`No clear ${window}.`),
        plain(` Nothing in this range is sound beyond doubt.${nearest}${next}${besides}`),
      ];
    return [bold(`No ${window}.`), plain(` Nothing is sound anywhere in this range.${next}${besides}`)];
  }
  const range = stretchWords(axes, answer, 'sound', units);
  if (isSetSound) {
    const shortage = feeders.atSetting;
    const { lead, rest } = soundWords({ axes, answer, margins, spreads, shortage }, units);
    return [bold(lead), plain(`${rest.close}${rest.range ?? range}${rest.holes}${told}`)];
  }
  if (setRegion === null) return [bold(`There is a ${window}.`), plain(`${range}${told}`)];
  return [
    bold(`The setting ${regionWords(setRegion)}.`.replace('setting near', 'setting is near')),
    plain(`${range}${told}`),
  ];
}

/** A range may leave out what is set; within it the setting may be sound by itself, between two points that are not. */
export const holdsSetPoint = (axes: readonly NamedAxis[]): boolean =>
  axes.every(
    ({ from, to, setPoint }) =>
      setPoint !== null && setPoint >= Math.min(from, to) && setPoint <= Math.max(from, to),
  );

/** The point of the setting itself is computed first, and does not change. */
const ofSetting = (region: Region | null, { atSetting }: Feeders): string =>
  region === null ? '' : ` The setting itself: ${regionAndFeeder(region, atSetting)}.`;

/** One margin in words: "6.9 s shorter, then folds film". */
export function marginWords(axes: readonly NamedAxis[], margin: Margin, units: PageUnits = METRIC): string {
  const { axis, direction, distance, meets } = margin;
  const { name, quantity } = axes[axis]!;
  const way = direction < 0 ? 'less' : 'more';
  if (margin.isMachines) return `${name}: sound to the machine's limit, ${way}`;
  if (distance === null || meets === null) return `${name}: sound to the end of the range, ${way}`;
  return `${shownDistance(distance, quantity, units)} ${way} ${name}, to ${faultWords(margin, meets)}`;
}

/** Where a change opens a window: "charge 0.61 kg: sound at tilt time 6 s, start angle +30°". */
export function triedWords(
  axes: readonly NamedAxis[],
  change: string,
  { soundAt, unjudged }: TriedChange,
  units: PageUnits = METRIC,
): string {
  if (unjudged) return `${change}: nothing to judge, ${regionWords(unjudged)}`;
  return soundAt === null
    ? `${change}: nothing sound`
    : `${change}: sound at ${valueWords(axes, soundAt, units)}`;
}
