import type { Section } from '$src/core/section/section';
import { fillLevelFromVolume } from './fillLevel';
import { levelPath } from './levelPath';
import type { Stand } from './stand';

/** Where ladled metal stands before the tilt, from the lip, + above it, plumb [m]; null where it covers the lip at first. */
export interface StartLevel {
  /** Held back at its edge by its skin, as a pour begins and as it is drawn. */
  readonly held: number | null;
  /** The same metal if it lay dead level right to its edge. */
  readonly dead: number | null;
  /** How far before the mouth its edge stops, along the axis [m]; 0 where it reaches the mouth. */
  readonly shortOfMouth: number;
  /** Share of the die that the ladle fills, 0 to 1. */
  readonly inDie: number;
}

/** The level of a volume [m³] at the start inclination [rad]; without a stand, both levels are one. */
export function startLevel(section: Section, volume: number, start: number, stand: Stand | null): StartLevel {
  const { pools, share } = levelPath(section, volume, start, start, stand);
  const foremost = pools[0]?.at(-1);
  return {
    held: fillLevelFromVolume(section, start, volume, stand),
    dead: fillLevelFromVolume(section, start, volume),
    shortOfMouth: foremost ? Math.max(0, section.mouth - foremost.to) : 0,
    inDie: share[0] ?? 0,
  };
}
