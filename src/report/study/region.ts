import { isLadledIn } from '../ladledIn';
import type { Refusal } from './planAt';
import type { PointFigures } from './pointFigures';
import { spillWords } from './spillByEnd';

/** Where a point of a study lies. */
export type Region =
  | 'sound'
  | 'near the limit'
  | 'folds film'
  | 'folds film and laps'
  | 'folds film and spills'
  | 'folds film, laps and spills'
  | 'laps'
  | 'misrun'
  | 'gas held'
  | 'not filled'
  | 'spills metal'
  | 'in the die while ladling'
  | 'outside the machine'
  | 'no such pour'
  | 'not computed';

/** What is known of one point: figures of its pour, why there is none, or why it broke. */
export type PointResult =
  | { readonly figures: PointFigures }
  | { readonly refused: Refusal }
  | { readonly failed: string };

/** What is known before anything is poured. */
const REFUSED: Readonly<Record<Refusal['by'], Region>> = {
  machine: 'outside the machine',
  section: 'no such pour',
  charge: 'no such pour',
  ladle: 'in the die while ladling',
};

export function regionOf(result: PointResult): Region {
  if ('failed' in result) return 'not computed';
  if ('refused' in result) return REFUSED[result.refused.by];
  return regionOfFigures(result.figures);
}

function regionOfFigures({ outcome, verdict, lap, shareAtStart, spill }: PointFigures): Region {
  if (isLadledIn(shareAtStart)) return 'in the die while ladling';
  const isCold = lap !== null && lap.kind !== 'none';
  if (verdict === 'folds film') {
    const region = isCold ? 'folds film and laps' : 'folds film';
    return spillWords(spill) === '' ? region : SPILLING[region];
  }
  if (outcome === 'stopped by the user') return 'not computed';
  if (verdict === 'gas held') return 'gas held';
  if (lap && lap.kind !== 'none') return lap.kind;
  if (verdict === 'not filled') return 'not filled';
  if (verdict === 'spills') return 'spills metal';
  return verdict === 'near the limit' ? 'near the limit' : 'sound';
}

type Folding = 'folds film' | 'folds film and laps';

/** What folds and loses metal over a rim besides: no cure of the one mends the other. */
const SPILLING = {
  'folds film': 'folds film and spills',
  'folds film and laps': 'folds film, laps and spills',
} as const satisfies Readonly<Record<Folding, Region>>;

/** The region by its folds alone; of others the region itself. */
export const spillLeftOut = (region: Region): Region =>
  (Object.keys(SPILLING) as Folding[]).find((folding) => SPILLING[folding] === region) ?? region;

export const foldsFilm = (region: Region): boolean => spillLeftOut(region) in SPILLING;
export const isCold = (region: Region): boolean =>
  region === 'laps' || region === 'misrun' || spillLeftOut(region) === 'folds film and laps';
/** There was a pour and it says something. */
export const isPoured = (region: Region): boolean =>
  region !== 'in the die while ladling' &&
  region !== 'outside the machine' &&
  region !== 'no such pour' &&
  region !== 'not computed';
