import type { Point, Section } from '$src/core/section/section';
import { cornerCode } from './cornerNames';
import { dragged, type Handle, placeOf } from './handles';
import { type Corner, snapTo } from './outlineEdit';

const SAME = 1e-9;
const isSame = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

/** Why a handle that is moved to a point on the grid of `step` [m] does not go there; null where it does. */
export function stopWords(section: Section, handle: Handle, to: Point, step: number): string | null {
  const kept = placeOf(dragged(section, handle, to, step), handle, to.y);
  if (handle.kind === 'pivot') return null;
  if (!isSame(kept.x, snapTo(to.x, step)))
    return handle.kind === 'mouth'
      ? 'leaves some basin and some die, and passes no region'
      : sideStop(section, handle.corner, kept.x);
  if (handle.kind === 'mouth' || isSame(kept.y, snapTo(to.y, step))) return null;
  return `keeps 1 mm off the ${handle.corner.line === 'floor' ? 'roof' : 'floor'}`;
}

function sideStop(section: Section, { line, index }: Corner, x: number): string {
  const points = section[line];
  if (index === 0) return 'stays at the back wall: x counts from there';
  const neighbour = [index - 1, index + 1].find((one) => points[one] && isSame(points[one].x, x));
  if (neighbour === undefined) return 'keeps 1 mm off the mouth and the corners before it';
  return `stops at ${cornerCode({ line, index: neighbour })}: move that first`;
}
