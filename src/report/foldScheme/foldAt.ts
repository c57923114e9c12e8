import type { NumberedFold } from '../numberedFolds';

/** A time that a choice or a scrubber lands on may miss that of the fold by this much [s]. */
const NEAR = 1e-3;

/** The fold a playback has come to: the last that has begun; null before the first. `folds` in order of time. */
export const foldAt = (folds: readonly NumberedFold[], time: number): NumberedFold | null =>
  folds.findLast((fold) => fold.time <= time + NEAR) ?? null;
