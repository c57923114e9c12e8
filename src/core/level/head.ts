import { cosine, sine } from '$src/core/elementary/sine';
import type { Section } from '$src/core/section/section';
import { columnsOf } from './columns';
import { connectedAt, lowestRim } from './fillLevel';
import { levelPath } from './levelPath';
import type { Pool } from './pools';
import { volumeOf } from './poolVolume';
import { type Terrain, terrainAt, turnable } from './terrain';

/** Heads closer than this are one head [m]. */
const SAME_HEAD = 1e-9;
const MAX_CORRECTIONS = 8;

/**
 * Charge that leaves a head over the mouth at the end inclination [m³].
 *
 * @param head height of the level over the highest place of the mouth, measured plumb [m]
 * @returns null when no charge does: the head would stand over a rim there, or be lost on the way
 */
export function volumeFromHead(section: Section, start: number, end: number, head: number): number | null {
  const { terrain, mouthColumn, mouthTop } = mouthAt(section, end);
  const elevation = mouthTop + head;
  const [from, to] = connectedAt(terrain, mouthColumn, elevation);
  if (from > to || elevation > lowestRim(terrain, from, to)) return null;
  const standing = volumeOf(terrain.levels, from, to, elevation);
  let volume = standing;
  // Metal kept back in other pools never joins the feeder; add what is missing until the head is met.
  for (let k = 0; k < MAX_CORRECTIONS; k++) {
    const reached = poolAtMouth(section, start, end, volume);
    if (!reached) return null;
    if (Math.abs(reached.level - elevation) <= SAME_HEAD) return volume;
    volume += standing - reached.volume;
  }
  return null;
}

/** Head over the highest place of the mouth at the end inclination [m]; null when the mouth is not covered. */
export function headFromVolume(section: Section, start: number, end: number, volume: number): number | null {
  if (!(volume > 0)) return null;
  const reached = poolAtMouth(section, start, end, volume);
  const head = reached ? reached.level - mouthAt(section, end).mouthTop : Number.NaN;
  return head >= 0 ? head : null;
}

function poolAtMouth(section: Section, start: number, end: number, volume: number): Pool | null {
  const pools = levelPath(section, volume, start, end, null).pools.at(-1)!;
  return pools.find((pool) => pool.from <= section.mouth + SAME_HEAD && pool.to > section.mouth) ?? null;
}

interface Mouth {
  readonly terrain: Terrain;
  /** First column past the mouth. */
  readonly mouthColumn: number;
  readonly mouthTop: number;
}

function mouthAt(section: Section, inclination: number): Mouth {
  const columns = columnsOf(section);
  const terrain = terrainAt(turnable(columns), inclination, Number.POSITIVE_INFINITY);
  const mouthColumn = Math.max(
    0,
    columns.columns.findIndex((column) => column.left >= section.mouth - SAME_HEAD),
  );
  const heights = [columns.sills[mouthColumn]!, columns.tops[mouthColumn]!];
  const mouthTop = Math.max(
    ...heights.map((y) => section.mouth * sine(inclination) + y * cosine(inclination)),
  );
  return { terrain, mouthColumn, mouthTop };
}
