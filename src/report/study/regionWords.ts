import type { Margin } from './margins';
import { type PointResult, type Region, regionOf, spillLeftOut } from './region';
import { spillWords } from './spillByEnd';

const WORDS: Readonly<Record<Region, string>> = {
  sound: 'sound',
  'near the limit': 'near a limit',
  'folds film': 'folds film',
  'folds film and laps': 'folds film and laps',
  'folds film and spills': 'folds film, spills metal',
  'folds film, laps and spills': 'folds film, laps, spills metal',
  laps: 'laps',
  misrun: 'misruns',
  'gas held': 'is held up by gas',
  'not filled': 'does not fill',
  'spills metal': 'spills metal',
  'in the die while ladling': 'in the die while ladling',
  'outside the machine': 'past what the machine can do',
  'no such pour': 'no such pour',
  'not computed': 'not computed',
};
export const regionWords = (region: Region): string => WORDS[region];

/** What the feeder of a point lacks; null where that is nothing, not told, or where there is no pour. */
export const shortageOf = (result: PointResult): string | null =>
  'figures' in result ? result.figures.shortage : null;

/** A pour that was computed: its region, and what its feeder lacks; nothing is called sound whose feeder is short. */
export function resultWords(result: PointResult): string {
  const region = spillLeftOut(regionOf(result));
  const words = regionAndFeeder(region, shortageOf(result));
  // A hazard to whoever stands there leads, whatever becomes of the casting.
  return spills(result) && region !== 'spills metal' ? `${regionWords('spills metal')}, and ${words}` : words;
}

const spills = (result: PointResult): boolean =>
  'figures' in result && spillWords(result.figures.spill) !== '';

export function regionAndFeeder(region: Region, shortage: string | null): string {
  if (shortage === null) return regionWords(region);
  return region === 'sound' ? `fills quietly, but ${shortage}` : `${regionWords(region)}, and ${shortage}`;
}

/** What lies past an edge: "folds film", or "folds film or misruns" where the line and the map's row beside it differ. */
export const faultWords = ({ mapMeets }: Margin, meets: Region): string =>
  mapMeets ? `${regionWords(meets)} or ${regionWords(mapMeets)}` : regionWords(meets);
