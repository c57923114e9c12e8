import { sineAndCosine } from '$src/core/elementary/sine';
import type { Cylinder, Place } from './machine';

/** A place on the body as it lies in the room at this inclination [rad]; see docs/conventions.md for the sign. */
export const inRoom = (place: Place, inclination: number): Place => turned(place, sineAndCosine(inclination));

/** Sine and cosine of an inclination, where several places are turned by it. */
export interface Turn {
  readonly sin: number;
  readonly cos: number;
}

const turned = ({ x, y }: Place, { sin, cos }: Turn): Place => ({
  x: x * cos - y * sin,
  y: x * sin + y * cos,
});

export interface Reach {
  /** From eye to eye [m]. */
  readonly length: number;
  /** d(length)/d(inclination) [m/rad]: the arm of the cylinder's force, with its sign. */
  readonly lever: number;
}

/** Length and true arm of the cylinder: no constant radius, both follow from the two eyes. */
export const reachAt = (cylinder: Cylinder, inclination: number): Reach =>
  reachOf(cylinder, sineAndCosine(inclination));

export function reachOf({ attachment, anchor }: Cylinder, turn: Turn): Reach {
  const eye = turned(attachment, turn);
  const dx = eye.x - anchor.x;
  const dy = eye.y - anchor.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  // The eye moves by (−y, x) per radian about the pivot.
  const lever = length > 0 ? (-eye.y * dx + eye.x * dy) / length : 0;
  return { length, lever };
}
