import { levelOf } from './poolVolume';
import { columnsOfPond, highestCrestInside, type Pond } from './settle';
import type { Terrain } from './terrain';

/** Metal at rest at one inclination. */
export interface Rest {
  readonly inclination: number;
  readonly terrain: Terrain;
  readonly ponds: readonly Pond[];
  /** Level of each pond [m, lab elevation]; NaN when it is dry. */
  readonly levels: readonly number[];
  /** Volume in each column of the section [m³]. */
  readonly inColumn: readonly number[];
  readonly spilled: number;
  /** Place the front has reached so far and wetted [m]; Infinity without a capillary stand. */
  readonly reach: number;
}

export interface Carried {
  readonly ponds: readonly Pond[];
  /** Whether metal that stood connected has come apart. */
  readonly cameApart: boolean;
}

/** How far a level may lie under a crest and still count as touching it [m]. */
const TOUCHING = 1e-12;

/**
 * Puts metal at rest onto the terrain of the next inclination: each pond stays in the hollows it is in. One that
 * lies across a crest stays connected when its common level reaches the crest; else it parts there, each side
 * keeping what its columns held before.
 */
export function carry(rest: Rest, terrain: Terrain): Carried {
  const state = { ponds: dryPonds(terrain), cameApart: false };
  for (const pond of rest.ponds) {
    if (pond.volume <= 0) continue;
    const [from, to] = columnsOfPond(rest.terrain, pond);
    const wet = wetColumns(rest.inColumn, from, Math.min(to, terrain.columns.length - 1));
    if (wet) place(terrain, state, rest.inColumn, wet, pond.volume);
  }
  return state;
}

export const dryPonds = (terrain: Terrain): Pond[] =>
  terrain.hollows.map((_, k) => ({ first: k, last: k, volume: 0 }));

function wetColumns(inColumn: readonly number[], from: number, to: number): [number, number] | null {
  let first = from;
  let last = to;
  while (first <= last && !(inColumn[first]! > 0)) first++;
  while (last >= first && !(inColumn[last]! > 0)) last--;
  return first <= last ? [first, last] : null;
}

interface Carrying {
  ponds: Pond[];
  cameApart: boolean;
}

function place(
  terrain: Terrain,
  state: Carrying,
  inColumn: readonly number[],
  [from, to]: [number, number],
  volume: number,
): void {
  const first = hollowAt(terrain, from);
  const last = hollowAt(terrain, to);
  const across: Pond = { first, last, volume };
  const crest = first < last ? highestCrestInside(terrain, across) : null;
  if (!crest || reaches(terrain, across, crest.elevation)) {
    join(state, across);
    return;
  }
  state.cameApart = true;
  const face = terrain.hollows[crest.after]!.from;
  let left = 0;
  let all = 0;
  for (let i = from; i <= to; i++) {
    all += inColumn[i]!;
    if (i < face) left += inColumn[i]!;
  }
  const leftVolume = (volume * left) / all;
  place(terrain, state, inColumn, [from, face - 1], leftVolume);
  place(terrain, state, inColumn, [face, to], volume - leftVolume);
}

function hollowAt(terrain: Terrain, column: number): number {
  return terrain.hollows.findIndex((hollow) => hollow.to >= column);
}

function reaches(terrain: Terrain, pond: Pond, elevation: number): boolean {
  const [from, to] = columnsOfPond(terrain, pond);
  return levelOf(terrain.levels, from, to, pond.volume) >= elevation - TOUCHING;
}

/** Adds metal to the ponds it lies across and makes one pond of them. */
function join(state: Carrying, metal: Pond): void {
  const first = state.ponds.findIndex((pond) => pond.last >= metal.first);
  const last = state.ponds.findIndex((pond) => pond.last >= metal.last);
  const parts = state.ponds.slice(first, last + 1);
  const volume = parts.reduce((sum, pond) => sum + pond.volume, metal.volume);
  state.ponds.splice(first, parts.length, { first: parts[0]!.first, last: parts.at(-1)!.last, volume });
}
