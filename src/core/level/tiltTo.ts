import { cosine } from '$src/core/elementary/sine';
import { carry, dryPonds, type Rest } from './carry';
import type { Columns } from './columns';
import { volumeBelow } from './columnVolume';
import { A_HAIR, moveFront, type PondBehind, type StandGround } from './frontStand';
import { levelOf } from './poolVolume';
import { columnsOfPond, highestCrestInside, type Passage, type Pond, settle } from './settle';
import type { Stand } from './stand';
import { type Terrain, type Turnable, terrainAt } from './terrain';

/** What stays the same over a whole tilt. */
export interface Fill {
  readonly columns: Columns;
  readonly turnable: Turnable;
  /** All metal [m³]. */
  readonly metal: number;
  readonly stand: Stand | null;
}

export interface Tilted {
  readonly rest: Rest;
  readonly passages: readonly Passage[];
  readonly cameApart: boolean;
}

/** Fronts move on in pieces of floor, at most a few per column; more than this is our own mistake. */
const MAX_FRONT_MOVES = 1000;

/**
 * Metal at rest after turning from one inclination to another nearby: carried over, its front moved on while the
 * stand lets it, and overflows settled.
 */
export function tiltTo(fill: Fill, before: Rest, inclination: number): Tilted {
  const ground = groundAt(fill, inclination, before.reach);
  const passages: Passage[] = [];
  let cameApart = false;
  let rest = before;
  let reach = ground ? before.reach : Number.POSITIVE_INFINITY;
  for (let move = 0; move < MAX_FRONT_MOVES; move++) {
    let terrain = terrainAt(fill.turnable, inclination, reach);
    let carried = carry(rest, terrain);
    const front = ground
      ? moveFront(ground, pondBehind(terrain, carried.ponds), reach)
      : { reach, ranAway: false };
    if (front.reach > reach) {
      reach = front.reach;
      terrain = terrainAt(fill.turnable, inclination, reach);
      carried = carry(rest, terrain);
    } else if (move > 0) return { rest, passages, cameApart };
    const settled = settle(terrain, carried.ponds, fill.metal);
    const feeding = front.ranAway ? lastLevel(rest) : Number.NEGATIVE_INFINITY;
    passages.push(
      ...settled.passages.map((passage) => ({ ...passage, feeding: Math.max(passage.feeding, feeding) })),
    );
    cameApart ||= carried.cameApart;
    rest = atRest(inclination, terrain, settled.ponds, rest.spilled + settled.spilled, reach);
    if (!ground) return { rest, passages, cameApart };
  }
  throw new Error(
    `level fill: the front is still moving after ${MAX_FRONT_MOVES} moves at inclination ${inclination} rad`,
  );
}

/** What holds a front at this inclination; null without a stand, past upright, or once all floor is wetted. */
function groundAt(fill: Fill, inclination: number, reach: number): StandGround | null {
  const isHeld = fill.stand && cosine(inclination) > 0 && reach < fill.columns.columns.at(-1)!.right;
  if (!isHeld) return null;
  return {
    columns: fill.columns,
    whole: terrainAt(fill.turnable, inclination, Number.POSITIVE_INFINITY),
    stand: fill.stand!,
  };
}

function pondBehind(terrain: Terrain, ponds: readonly Pond[]): PondBehind {
  const last = ponds.at(-1)!;
  const crest = highestCrestInside(terrain, last)?.elevation ?? Number.NEGATIVE_INFINITY;
  return { from: columnsOfPond(terrain, last)[0], volume: last.volume, crest };
}

const lastLevel = (rest: Rest) =>
  rest.levels.findLast((level) => !Number.isNaN(level)) ?? Number.NEGATIVE_INFINITY;

function atRest(
  inclination: number,
  terrain: Terrain,
  ponds: readonly Pond[],
  spilled: number,
  reach: number,
): Rest {
  const inColumn = terrain.columns.map(() => 0);
  const levels = ponds.map((pond) => {
    if (pond.volume <= 0) return Number.NaN;
    const [from, to] = columnsOfPond(terrain, pond);
    const level = levelOf(terrain.levels, from, to, pond.volume);
    for (let i = from; i <= to; i++) inColumn[i] = volumeBelow(terrain.levels[i]!, level);
    return level;
  });
  return { inclination, terrain, ponds, levels, inColumn, spilled, reach };
}

/** The metal as ladled: all of it behind the mouth, in the lowest hollow there, then settled. */
export function ladle(fill: Fill, inclination: number): Tilted {
  const whole = terrainAt(fill.turnable, inclination, Number.POSITIVE_INFINITY);
  const column = lowestColumnBehindMouth(fill.columns, whole);
  const hollow = whole.hollows.findIndex((candidate) => candidate.to >= column);
  const ponds = dryPonds(whole).map((pond) =>
    pond.first === hollow ? { ...pond, volume: fill.metal } : pond,
  );
  const inColumn = whole.columns.map((_, i) => (i === column ? fill.metal : 0));
  const reach = firstReach(
    fill,
    inclination,
    { from: whole.hollows[hollow]!.from, volume: fill.metal, crest: Number.NEGATIVE_INFINITY },
    lowestPlace(whole, column),
  );
  const poured: Rest = {
    inclination,
    terrain: whole,
    ponds,
    levels: ponds.map(() => Number.NaN),
    inColumn,
    spilled: 0,
    reach,
  };
  return tiltTo(fill, poured, inclination);
}

/** Metal spreads from where it is ladled until its front stands; it starts a hair inside its column, past any step. */
function firstReach(fill: Fill, inclination: number, pond: PondBehind, bottom: number): number {
  const ground = groundAt(fill, inclination, bottom);
  return ground ? moveFront(ground, pond, bottom + A_HAIR).reach : Number.POSITIVE_INFINITY;
}

/** Where metal is ladled: the column behind the mouth whose floor lies lowest. */
export function lowestColumnBehindMouth(columns: Columns, terrain: Terrain): number {
  let lowest = 0;
  for (let i = 1; i < terrain.columns.length && terrain.columns[i]!.right <= columns.mouth; i++) {
    if (terrain.levels[i]!.z1 < terrain.levels[lowest]!.z1) lowest = i;
  }
  return lowest;
}

function lowestPlace(terrain: Terrain, index: number): number {
  const column = terrain.columns[index]!;
  const left = column.left * terrain.sin + column.floorLeft * terrain.cos;
  const right = column.right * terrain.sin + column.floorRight * terrain.cos;
  return right < left ? column.right : column.left;
}
