import type { Point, Section } from '$src/core/section/section';
import { cornerCode } from './cornerNames';
import type { Corner } from './outlineEdit';

/** A straight piece of the outline, by the corner it begins at. */
export type Piece = Corner;

/**
 * The piece that a new corner goes into: the one after the chosen corner (before it, for the last of a line); the longest of
 * the floor where no corner is chosen.
 * @param chosen code of a corner, such as F2, or of anything else that can be chosen
 */
export function pieceToSplit(section: Section, chosen: string | null): Piece {
  const found = /^([FR])(\d+)$/.exec(chosen ?? '');
  const line = found?.[1] === 'R' ? 'roof' : 'floor';
  const points = section[line];
  const index = found ? Math.min(Number(found[2]) - 1, points.length - 2) : longestPiece(points);
  return { line, index };
}

/** "F1 and F2": the corners it lies between. */
export const endsOf = ({ line, index }: Piece): string =>
  `${cornerCode({ line, index })} and ${cornerCode({ line, index: index + 1 })}`;

function longestPiece(points: readonly Point[]): number {
  const lengths = points.slice(1).map((p, i) => p.x - points[i]!.x);
  return lengths.indexOf(Math.max(...lengths));
}
