import type { Fold } from '$src/core/pour/record';

/** "marked", or "marked, borderline" for a fold that another mesh may not show. */
export const foldSizeText = ({ size, isClear }: Pick<Fold, 'size' | 'isClear'>): string =>
  isClear ? size : `${size}, borderline`;

/** What the word means, said once under a list that has it. */
export const BORDERLINE =
  'Borderline: with limits a fifth stricter it would not count, or it came while gas was shut in for good. Another mesh, or the same charge ladled again, may not show it.';
