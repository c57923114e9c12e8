import type { Point, Section } from '$src/core/section/section';
import { cornerCode, cornerName } from './cornerNames';
import { type Corner, keptInBounds, keptMouth, movedTo, snapTo, withMouth } from './outlineEdit';

/** Something of a section that can be taken hold of in the drawing. */
export type Handle =
  | { readonly kind: 'corner'; readonly corner: Corner }
  | { readonly kind: 'mouth' }
  | { readonly kind: 'pivot' };

export const handleKey = (handle: Handle): string =>
  handle.kind === 'corner' ? cornerCode(handle.corner) : handle.kind;

export function handleName(section: Section, handle: Handle): string {
  if (handle.kind !== 'corner') return handle.kind;
  return `${cornerCode(handle.corner)}, ${cornerName(section, handle.corner)}`;
}

/** Every handle, corners of the floor first, in the order of the keyboard. */
export function handlesOf(section: Section): Handle[] {
  const corners = (line: 'floor' | 'roof'): Handle[] =>
    section[line].map((_, index) => ({ kind: 'corner', corner: { line, index } }));
  return [...corners('floor'), ...corners('roof'), { kind: 'mouth' }, { kind: 'pivot' }];
}

/** Where a handle stands, die frame [m]. The mouth is held at `mouthY` on its line. */
export function placeOf(section: Section, handle: Handle, mouthY: number): Point {
  if (handle.kind === 'corner') return section[handle.corner.line][handle.corner.index]!;
  return handle.kind === 'mouth' ? { x: section.mouth, y: mouthY } : section.pivot;
}

/** The section with a handle dragged to a point: on the grid of `step` [m] and inside its bounds. */
export function dragged(section: Section, handle: Handle, to: Point, step: number): Section {
  const snapped = { x: snapTo(to.x, step), y: snapTo(to.y, step) };
  if (handle.kind === 'mouth') return withMouth(section, keptMouth(section, snapped.x));
  if (handle.kind === 'pivot') return { ...section, pivot: snapped };
  return movedTo(section, handle.corner, keptInBounds(section, handle.corner, snapped));
}

/** The section with a handle moved by steps of the arrow keys [m]. */
export function nudged(section: Section, handle: Handle, dx: number, dy: number): Section {
  const at = placeOf(section, handle, 0);
  const to = { x: Number((at.x + dx).toFixed(9)), y: Number((at.y + dy).toFixed(9)) };
  if (handle.kind === 'mouth') return withMouth(section, keptMouth(section, to.x));
  if (handle.kind === 'pivot') return { ...section, pivot: to };
  return movedTo(section, handle.corner, keptInBounds(section, handle.corner, to));
}
