import type { Fold, PourRecord } from '$src/core/pour/record';
import { isBrimful } from './brimful';
import { cureFor } from './cureFor';

/** A fold with the number it carries in picture, charts, scrubber and list, 1 the first in time, and a cure its machine can take. */
export interface NumberedFold extends Fold {
  readonly number: number;
}

export const numberedFolds = ({ folds, plan }: PourRecord): readonly NumberedFold[] =>
  folds
    .toSorted((a, b) => a.time - b.time)
    .map((fold, index) => ({ ...fold, cure: cureFor(fold, plan.tilt, isBrimful(plan)), number: index + 1 }));
