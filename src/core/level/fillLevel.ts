import type { Section } from '$src/core/section/section';
import { columnsOf } from './columns';
import { lipElevation } from './lip';
import { poolsOf } from './pools';
import { volumeOf } from './poolVolume';
import type { Stand } from './stand';
import { type Terrain, terrainAt, topOf, turnable } from './terrain';
import { type Fill, ladle, lowestColumnBehindMouth } from './tiltTo';

/**
 * Volume that stands at a fill level at the start inclination [m³], with a level surface and no capillary stand.
 *
 * @param fromLip level above (+) or below (−) the lip, measured plumb [m]
 * @returns null when no metal stands so low, or none can stand so high
 */
export function volumeFromFillLevel(section: Section, start: number, fromLip: number): number | null {
  const { terrain, column, lip } = basinAt(section, start);
  const elevation = lip + fromLip;
  if (!stands(terrain, column, elevation)) return null;
  const [from, to] = connectedAt(terrain, column, elevation);
  const volume = volumeOf(terrain.levels, from, to, elevation);
  return volume > 0 ? volume : null;
}

/**
 * Fill level of a volume at the start inclination, above (+) or below (−) the lip, measured plumb [m].
 *
 * @param stand of the metal, which holds it back at the lip; null = a level surface that runs over it
 * @returns null when the volume is not positive, does not fit, or leaves the basin altogether
 */
export function fillLevelFromVolume(
  section: Section,
  start: number,
  volume: number,
  stand: Stand | null = null,
): number | null {
  if (!(volume > 0)) return null;
  const { fill, terrain, column, lip } = basinAt(section, start);
  const { rest } = ladle({ ...fill, metal: volume, stand }, start);
  if (rest.spilled > 1e-12 * volume) return null;
  const { left, right } = terrain.columns[column]!;
  const pool = poolsOf(rest, volume).find((candidate) => candidate.from < right && candidate.to > left);
  return pool ? pool.level - lip : null;
}

/** Halvings that find a level to a nanometre and less. */
const HALVINGS = 36;

/**
 * Between which fill levels metal can stand at the start inclination [m from the lip]; at the lowest there is none yet, at
 * the highest there is. Null when there is no such level.
 */
export function fillLevels(
  section: Section,
  start: number,
): readonly [lowest: number, highest: number] | null {
  const { terrain, column, lip } = basinAt(section, start);
  const floor = terrain.levels[column]!.z1;
  const top = topOf(terrain, 0, terrain.columns.length - 1);
  let [good, bad] = stands(terrain, column, top) ? [top, top] : [floor, top];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2;
    if (stands(terrain, column, middle)) good = middle;
    else bad = middle;
  }
  return good > floor ? [floor - lip, good - lip] : null;
}

/** Whether metal can stand at this elevation in what is connected to a column: over its floor, and over no rim. */
function stands(terrain: Terrain, column: number, elevation: number): boolean {
  const [from, to] = connectedAt(terrain, column, elevation);
  return from <= to && elevation <= lowestRim(terrain, from, to);
}

interface Basin {
  readonly fill: Fill;
  readonly terrain: Terrain;
  readonly column: number;
  readonly lip: number;
}

function basinAt(section: Section, inclination: number): Basin {
  const columns = columnsOf(section);
  const fill: Fill = { columns, turnable: turnable(columns), metal: 0, stand: null };
  const terrain = terrainAt(fill.turnable, inclination, Number.POSITIVE_INFINITY);
  const column = lowestColumnBehindMouth(columns, terrain);
  return { fill, terrain, column, lip: lipElevation(columns, terrain, column) };
}

/** Columns connected to one below an elevation: from…to; empty (from > to) when that column is dry. */
export function connectedAt(terrain: Terrain, column: number, elevation: number): [number, number] {
  if (!(elevation > terrain.levels[column]!.z1)) return [column, column - 1];
  let from = column;
  let to = column;
  while (from > 0 && terrain.sills[from]! < elevation) from--;
  while (to + 1 < terrain.columns.length && terrain.sills[to + 1]! < elevation) to++;
  return [from, to];
}

/** The lowest elevation at which metal in the columns from…to leaves over a rim [m]. */
export function lowestRim(terrain: Terrain, from: number, to: number): number {
  return terrain.rims
    .filter((rim) => rim.column >= from && rim.column <= to)
    .reduce(
      (lowest, rim) => Math.min(lowest, rim.x * terrain.sin + rim.y * terrain.cos),
      Number.POSITIVE_INFINITY,
    );
}
