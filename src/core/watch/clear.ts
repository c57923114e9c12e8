import type { Episode } from './episode';

/**
 * How much stricter every limit of a fold is made to ask whether it is clear of them, and it must then be seen in every
 * look of its window. From 200 to 400 mesh cells the figures that folds are read from move by up to a sixth, so that one
 * which does not count with limits a fifth stricter may be missing on another mesh. The fifth is ours.
 */
export const STRICTER = 1.2;

/** Whether something was also seen under the stricter limits while it lasted. */
export const isClear = (one: Episode, strict: readonly Episode[]): boolean =>
  strict.some(({ first, last }) => first.time <= one.last && last >= one.first.time);
