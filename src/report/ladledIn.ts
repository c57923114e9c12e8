import type { PourRecord } from '$src/core/pour/record';

/**
 * More of the die than this filled by the ladle: what the front did there is not computed. A film at the mouth is let
 * pass; more would let a pour that is slopped in rank before one that is held back. Ours, no source.
 */
const LADLED_SHARE = 0.02;

/** Share of the die that is full before the tilt begins. */
export const shareAtStart = ({ series }: Pick<PourRecord, 'series'>): number => series.filledShare[0] ?? 0;

/** So much of the die is filled by the ladle that the pour itself says nothing of its skin. */
export const isLadledIn = (share: number): boolean => share > LADLED_SHARE;
