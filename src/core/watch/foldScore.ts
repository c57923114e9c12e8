import type { Fold, FoldSize } from '$src/core/pour/record';

const WEIGHT: Record<FoldSize, number> = { slight: 0.1, marked: 0.5, heavy: 1 };

/**
 * Fold score = skin folded in per die length + Σ over folds of 0.1 (slight), 0.5 (marked) or 1 (heavy); the
 * contraction itself is in the first term and not counted again. 0 = nothing seen. It ranks pours of one casting
 * against each other and means nothing else: not a probability, not a scrap rate, and not comparable between
 * castings. The weights are ours.
 */
export function foldScore(folds: readonly Fold[], skinFolded: number, dieLength: number): number {
  const events = folds.filter((fold) => fold.kind !== 'skin contraction');
  return skinFolded / dieLength + events.reduce((sum, fold) => sum + WEIGHT[fold.size], 0);
}
