import type { Fold } from '$src/core/pour/record';

/** "marked", or "marked, borderline" for a fold that another mesh may not show. */
export const foldSizeText = ({ size, isClear }: Pick<Fold, 'size' | 'isClear'>): string =>
  isClear ? size : `${size}, borderline`;

/** What the word means, said once under a list that has it. */
export const BORDERLINE =
  'Borderline: with limits a fifth stricter it would not count, or it is a jump, a meeting of fronts or a lap around gas that never left. Another mesh, or the same charge ladled again, may not show it.';
