import type { Fold, PourRecord } from '$src/core/pour/record';

/** A fold with the number it carries in picture, charts, scrubber and list: 1 is the first in time. */
export interface NumberedFold extends Fold {
  readonly number: number;
}

export const numberedFolds = (record: PourRecord): readonly NumberedFold[] =>
  record.folds.toSorted((a, b) => a.time - b.time).map((fold, index) => ({ ...fold, number: index + 1 }));
