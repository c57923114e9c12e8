import type { FoldSize } from '$src/core/pour/record';

/** Size of a fold from a ratio to its limit: below `marked` slight, below `heavy` marked, else heavy. The steps are ours. */
export function foldSize(ratio: number, marked: number, heavy: number): FoldSize {
  if (ratio >= heavy) return 'heavy';
  return ratio >= marked ? 'marked' : 'slight';
}
