import type { Margin } from './margins';
import type { Region } from './region';

const WORDS: Readonly<Record<Region, string>> = {
  sound: 'sound',
  'near the limit': 'near a limit',
  'folds film': 'folds film',
  'folds film and laps': 'folds film and laps',
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

/** What lies past an edge: "folds film", or "folds film or misruns" where the line and the map's row beside it differ. */
export const faultWords = ({ mapMeets }: Margin, meets: Region): string =>
  mapMeets ? `${regionWords(meets)} or ${regionWords(mapMeets)}` : regionWords(meets);
