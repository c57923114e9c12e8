import type { PointResult } from './region';
import { resultWords } from './regionWords';

/** Words that are no verb of their own need one. */
const isIt = (words: string): string =>
  /^(sound|near|in the die|past|no such|not )/.test(words) ? `is ${words}` : words;

/**
 * Said of the setting where the coarse mesh of the study calls it otherwise than the pour's own, finer mesh does; empty
 * where the two agree or the pour has not been run.
 */
export function ownMeshWords(
  there: PointResult | null,
  inPour: PointResult | null,
  meshCells: number,
): string {
  if (!there || !inPour || resultWords(there) === resultWords(inPour)) return '';
  return ` The pour as it is set ${isIt(resultWords(there))} on the mesh of the study, whose verdict the mark bears, and ${isIt(resultWords(inPour))} on its own mesh of ${meshCells} cells. The pour’s own counts; the study tells which way things go.`;
}
