import type { MarkKind } from '../verdictShape';
import { type PointResult, type Region, regionOf } from './region';
import { regionWords, shortageOf } from './regionWords';

const MARKS: Readonly<Record<Region, MarkKind>> = {
  sound: 'sound',
  'near the limit': 'near the limit',
  'folds film': 'folds film',
  'folds film and laps': 'folds film and laps',
  'folds film and spills': 'folds film',
  'folds film, laps and spills': 'folds film and laps',
  laps: 'laps',
  misrun: 'misrun',
  'gas held': 'gas held',
  'not filled': 'not filled',
  'spills metal': 'spills',
  'in the die while ladling': 'not judged',
  'outside the machine': 'not judged',
  'no such pour': 'not judged',
  'not computed': 'not judged',
};

/** The verdict of one point as a shape: nothing has the mark of sound whose feeder is short. */
export function pointMark(result: PointResult): MarkKind {
  const region = regionOf(result);
  return region === 'sound' && shortageOf(result) !== null ? 'feeder short' : MARKS[region];
}

/** A mark, and what it means in one study. */
export interface MarkMeaning {
  readonly mark: MarkKind;
  readonly words: string;
}

const ORDER: readonly MarkKind[] = [
  ...new Set(['sound', 'feeder short', ...Object.values(MARKS)] as MarkKind[]),
];

/** What the marks of a study mean; only those that are on it. */
export function markMeanings(results: Iterable<PointResult>): readonly MarkMeaning[] {
  const meanings = new Map<MarkKind, Set<string>>();
  for (const result of results) {
    const mark = pointMark(result);
    const words = mark === 'feeder short' ? FEEDER_SHORT : regionWords(regionOf(result));
    meanings.set(mark, (meanings.get(mark) ?? new Set()).add(words));
  }
  return ORDER.flatMap((mark) => {
    const words = meanings.get(mark);
    return words ? [{ mark, words: [...words].join(', ') }] : [];
  });
}

/** The filling is sound, and the feeder cannot feed the casting. */
export const FEEDER_SHORT = 'fills quietly, feeder short';
