import { basinCapacity } from '$src/core/level/basinCapacity';
import { allowedFall, largestFall, shareAtLevel } from '$src/core/level/figures';
import type { FirstFlow } from '$src/core/level/firstFlow';
import { firstFlow } from '$src/core/level/firstFlowBand';
import { heldAtEndOf } from '$src/core/level/heldAtEnd';
import { levelPath } from '$src/core/level/levelPath';
import { metalPolygons } from '$src/core/level/metalPolygons';
import type { Pool } from '$src/core/level/pools';
import { standOf } from '$src/core/level/stand';
import { type StartLevel, startLevel } from '$src/core/level/startLevel';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { metalAtLevel } from '$src/report/drawing/metalAtLevel';
import type { MetalShape } from '$src/report/drawing/metalShape';
import type { DrawnWith } from './sectionDrawnWith';

/** What a section says at its start inclination, SI; cheap enough for every frame of a drag. */
export interface StartReadings {
  /** Metal that fills all cavities [m³]. */
  readonly cavity: number;
  /** What stands behind the mouth before metal passes it [m³]. */
  readonly capacity: number;
  /** As the skin of the metal holds them, which is how a pour begins. */
  readonly pools: readonly Pool[];
  readonly level: StartLevel;
  readonly shape: MetalShape;
}

/** What a section says over its stroke, SI: from the level fill at some five hundred inclinations. */
export interface StrokeReadings {
  /** Without the capillary stand, with the metal's contact angle, and for metal that wets nothing. */
  readonly firstFlow: { readonly bare: FirstFlow; readonly value: FirstFlow; readonly latest: FirstFlow };
  /** With the stand, as the pour itself has it. */
  readonly shareAtLevel: number | null;
  readonly fall: number;
  /** The same without any stand. */
  readonly bareFall: number;
  readonly fallInclination: number;
  readonly allowedFall: number;
  readonly held: number;
  readonly spilled: number;
  readonly endShape: MetalShape;
}

/** `section` must have passed checkSection. */
export function startReadings(section: Section, { volume, start, liquid }: DrawnWith): StartReadings {
  const stand = standOf(liquid);
  const pools = levelPath(section, volume, start, start, stand).pools[0] ?? [];
  return {
    cavity: cavityVolume(section),
    capacity: basinCapacity(section, start),
    pools,
    level: startLevel(section, volume, start, stand),
    shape: shapeOf(section, pools, start),
  };
}

/**
 * Works out the readings over the stroke, and rests between its level fills, so that a hand need not wait for all of
 * them. `section` must have passed checkSection.
 */
export function* strokeSteps(
  section: Section,
  { volume, start, end, liquid }: DrawnWith,
): Generator<undefined, StrokeReadings> {
  const path = levelPath(section, volume, start, end, null);
  yield;
  const own = levelPath(section, volume, start, end, standOf(liquid));
  yield;
  const { fall, inclination } = largestFall(own);
  return {
    firstFlow: {
      bare: path.firstFlow,
      value: own.firstFlow,
      latest: firstFlow(section, volume, start, end, standOf({ ...liquid, contactAngle: Math.PI })),
    },
    shareAtLevel: shareAtLevel(own),
    fall,
    bareFall: largestFall(path).fall,
    fallInclination: inclination,
    allowedFall: allowedFall(liquid.criticalSpeed),
    ...pick(heldAtEndOf(path, volume)),
    endShape: shapeOf(section, own.pools.at(-1) ?? [], end),
  };
}

const pick = ({ held, spilled }: { held: number; spilled: number }) => ({ held, spilled });

function shapeOf(section: Section, pools: readonly Pool[], inclination: number): MetalShape {
  const levels = pools.map((pool) => pool.level);
  return metalAtLevel(metalPolygons(section, pools, inclination), levels, inclination);
}
