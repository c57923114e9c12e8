import type { Point, Section } from '$src/core/section/section';
import { cornerCode } from './cornerNames';
import { type LineName, snapTo, withCorner } from './outlineEdit';

/**
 * Adds a corner in the middle of the piece after the chosen corner; of the longest piece of floor when none is chosen.
 * @param chosen code of a corner, such as F2, or of anything else that can be chosen
 * @param step grid the new corner is put on [m]
 * @returns the section with it, and its code
 */
export function cornerAdded(
  section: Section,
  chosen: string | null,
  step: number,
): { readonly section: Section; readonly code: string } {
  const found = /^([FR])(\d+)$/.exec(chosen ?? '');
  const line: LineName = found?.[1] === 'R' ? 'roof' : 'floor';
  const points = section[line];
  const after = found ? Math.min(Number(found[2]) - 1, points.length - 2) : longestPiece(points);
  const [a, b] = [points[after]!, points[after + 1]!];
  const at = { x: snapTo((a.x + b.x) / 2, step), y: snapTo((a.y + b.y) / 2, step) };
  return { section: withCorner(section, line, after, at), code: cornerCode({ line, index: after + 1 }) };
}

function longestPiece(points: readonly Point[]): number {
  const lengths = points.slice(1).map((p, i) => p.x - points[i]!.x);
  return lengths.indexOf(Math.max(...lengths));
}
