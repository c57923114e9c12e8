import { levelPath } from '$src/core/level/levelPath';
import { metalPolygons } from '$src/core/level/metalPolygons';
import { type Stand, standOf } from '$src/core/level/stand';
import type { PourPlan } from '$src/core/pour/plan';
import type { Point, Section } from '$src/core/section/section';
import { metalAtLevel } from './metalAtLevel';
import type { MetalShape } from './metalShape';

/** Metal that has come to rest in a body that does not turn. */
export interface MetalAtRest {
  readonly shape: MetalShape;
  /** Outlines of its pools in the die frame [m], and the lab elevations of their surfaces [m]. */
  readonly outlines: readonly (readonly Point[])[];
  readonly levels: readonly number[];
}

/** The stand that a pour is computed with; null without the capillary gate. */
export const standOfPlan = ({
  computation,
  liquid,
}: Pick<PourPlan, 'computation' | 'liquid'>): Stand | null =>
  computation.capillaryGate ? standOf(liquid) : null;

/** How a volume [m³] lies at an inclination [rad] before the tilt, held back at a lip by its stand where it has one. */
export function metalAtRest(
  section: Section,
  volume: number,
  inclination: number,
  stand: Stand | null,
): MetalAtRest {
  const pools = levelPath(section, volume, inclination, inclination, stand).pools[0] ?? [];
  const outlines = metalPolygons(section, pools, inclination);
  const levels = pools.map(({ level }) => level);
  return { shape: metalAtLevel(outlines, levels, inclination), outlines, levels };
}
