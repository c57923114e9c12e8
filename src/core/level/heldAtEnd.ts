import type { Section } from '$src/core/section/section';
import { type LevelPath, levelPath } from './levelPath';

export interface Held {
  /** Metal still in the section at the end inclination [m³]. */
  readonly held: number;
  /** Metal that left over a rim on the way [m³]. */
  readonly spilled: number;
  /** Lab elevation of the largest pool's surface [m]; NaN when none is left. */
  readonly level: number;
}

export function heldAtEnd(section: Section, volume: number, start: number, end: number): Held {
  return heldAtEndOf(levelPath(section, volume, start, end, null), volume);
}

/** The same, read from a level path that has been computed already. */
export function heldAtEndOf(path: LevelPath, volume: number): Held {
  const spilled = path.spilled.at(-1)!;
  const largest = path.pools
    .at(-1)!
    .reduce((most, pool) => (pool.volume > most.volume ? pool : most), { volume: 0, level: Number.NaN });
  return { held: volume - spilled, spilled, level: largest.level };
}
