import { GRAVITY } from '$src/core/gravity';
import type { LevelPath } from './levelPath';

/** Share of the cavity that is full when the die axis passes level; null when it never does. */
export function shareAtLevel(path: LevelPath): number | null {
  const index = path.inclination.indexOf(0);
  return index < 0 ? null : path.share[index]!;
}

/** The greatest fall over the stroke [m] and the inclination it happens at [rad]. */
export function largestFall(path: LevelPath): { fall: number; inclination: number } {
  let index = 0;
  path.fall.forEach((fall, i) => {
    if (fall > path.fall[index]!) index = i;
  });
  return { fall: path.fall[index]!, inclination: path.inclination[index]! };
}

/** Drop that gives a speed from rest without friction [m]: v²/(2 g). */
export const allowedFall = (criticalSpeed: number): number => criticalSpeed ** 2 / (2 * GRAVITY);
