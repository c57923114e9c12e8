import type { PointResult } from './region';
import { resultWords } from './regionWords';

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
  return ` On its own mesh of ${meshCells} cells the pour as it is set is called: ${resultWords(inPour)}. That counts; the study tells which way things go.`;
}
