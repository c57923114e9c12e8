import type { ChargeBy } from '$src/cells/kinds';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import { headFromVolume } from '$src/core/level/head';
import type { Section } from '$src/core/section/section';
import type { DrawnWith } from './sectionDrawnWith';

/**
 * The charge, kept in the way it is given, that brings the metal to a level from the lip at the start [m].
 * Null when no metal can stand there.
 */
export function chargeAtLevel(section: Section, drawn: DrawnWith, fromLip: number): ChargeBy | null {
  const by = drawn.charge?.charge.by;
  if (by === undefined) return null;
  const volume = volumeFromFillLevel(section, drawn.start, fromLip);
  if (volume === null) return null;
  if (by === 'fill level') return { by, fromLip };
  if (by === 'mass') return { by, mass: volume * drawn.liquid.density };
  const head = headFromVolume(section, drawn.start, drawn.end, volume);
  return head === null ? null : { by, head };
}
