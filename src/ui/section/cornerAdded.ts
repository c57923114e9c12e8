import type { Section } from '$src/core/section/section';
import { cornerCode } from './cornerNames';
import { snapTo, withCorner } from './outlineEdit';
import type { Piece } from './pieceToSplit';

/**
 * Adds a corner in the middle of a piece of the outline.
 * @param step grid the new corner is put on [m]
 * @returns the section with it, its code, and what is to be said of it
 */
export function cornerAdded(
  section: Section,
  { line, index }: Piece,
  step: number,
): { readonly section: Section; readonly code: string; readonly words: string } {
  const [a, b] = [section[line][index]!, section[line][index + 1]!];
  const at = { x: snapTo((a.x + b.x) / 2, step), y: snapTo((a.y + b.y) / 2, step) };
  const [before, code, after] = [index, index + 1, index + 2].map((one) => cornerCode({ line, index: one }));
  return {
    section: withCorner(section, line, index, at),
    code: code!,
    words: `Point ${code} added midway between ${before} and ${after}. The arrow keys move it.`,
  };
}
