import type { ChargeBy } from '$src/cells/kinds';
import { shareThatLeaves } from '$src/core/heat/ladling';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import { headFromVolume, volumeFromHead } from '$src/core/level/head';
import type { Section } from '$src/core/section/section';
import type { PageUnits } from '$src/core/units';
import { settable } from '$src/report/study/settable';
import type { DrawnWith } from './sectionDrawnWith';

/**
 * The charge, kept in the way it is given, that brings the metal to a level from the lip at the start [m],
 * as a shop can set it. Null when no metal can stand there.
 */
export function chargeAtLevel(
  section: Section,
  drawn: DrawnWith,
  fromLip: number,
  units: PageUnits,
): ChargeBy | null {
  if (!drawn.charge) return null;
  const { charge, ladling } = drawn.charge;
  const volume = volumeFromFillLevel(section, drawn.start, fromLip);
  if (volume === null) return null;
  if (charge.by === 'fill level') return { by: 'fill level', fromLip };
  if (charge.by === 'mass') {
    const mass = (volume * drawn.liquid.density) / (ladling ? shareThatLeaves(ladling) : 1);
    return { by: 'mass', mass: settable(mass, 'mass', units) };
  }
  const exact = headFromVolume(section, drawn.start, drawn.end, volume);
  if (exact === null) return null;
  const head = settable(exact, 'length', units);
  return { by: 'head', head: volumeFromHead(section, drawn.start, drawn.end, head) === null ? exact : head };
}
