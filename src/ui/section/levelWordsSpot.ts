import { type Box, meet } from '$src/report/drawing/box';
import type { Spot } from '../drawing/view';

/** Of the level line, from its left end: the usual place first. */
const USUAL = 0.64;
const SHARES = Array.from({ length: 28 }, (_, i) => 0.3 + i * 0.02).sort(
  (one, other) => Math.abs(one - USUAL) - Math.abs(other - USUAL),
);
/** How far above the line the words stand, half their height, and the room one letter takes [px]. */
const OFF = 9;
const HALF_HEIGHT = 9;
const CHARACTER = 6.2;
/** The words are kept this far inside the ends of the line [px]. */
const INSIDE = 6;

/**
 * Middle of words that lie along a level line from `left` to `right`, where they lie on none of the boxes; null where
 * there is no such place: the caption has them too, and words nobody can read help no one.
 */
export function levelWordsSpot(words: string, left: Spot, right: Spot, taken: readonly Box[]): Spot | null {
  const length = Math.hypot(right.x - left.x, right.y - left.y);
  if (length === 0) return null;
  const along = { x: (right.x - left.x) / length, y: (right.y - left.y) / length };
  const half = (words.length * CHARACTER) / 2;
  for (const share of SHARES) {
    const middle = share * length;
    if (middle - half < INSIDE || middle + half > length - INSIDE) continue;
    const spot = {
      x: left.x + along.x * middle + along.y * OFF,
      y: left.y + along.y * middle - along.x * OFF,
    };
    const reach = {
      x: Math.abs(along.x) * half + Math.abs(along.y) * HALF_HEIGHT,
      y: Math.abs(along.y) * half + Math.abs(along.x) * HALF_HEIGHT,
    };
    const box = {
      left: spot.x - reach.x,
      right: spot.x + reach.x,
      top: spot.y - reach.y,
      bottom: spot.y + reach.y,
    };
    if (!taken.some((other) => meet(box, other))) return spot;
  }
  return null;
}
