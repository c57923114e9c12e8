import { placeText, speedText } from '../wording';
import type { Choice } from './choices';
import { drawnPlaces } from './frontSpeedGuess';
import { labelOf } from './outcome';

/** What was guessed, while its answer is not shown yet: the choice, or the quickest place of what was drawn over a die `length` long [m]. */
export function guessSaid(
  { picked, drawn }: { readonly picked: string | null; readonly drawn: readonly number[] },
  choices: readonly Choice[],
  length: number,
): string {
  if (drawn.length === 0) return `You chose “${labelOf(picked, choices)}”.`;
  const peak = Math.max(...drawn);
  if (peak - Math.min(...drawn) < 0.005) return `You drew a front of ${speedText(peak)} all the way.`;
  const place = drawnPlaces(length, drawn.length)[drawn.indexOf(peak)]!;
  return `You drew a front that is quickest at ${placeText(place)} from the mouth, with ${speedText(peak)}.`;
}
