import { levelOf, volumeOf } from './poolVolume';
import { bottomOf, type Hollow, type Terrain, topOf } from './terrain';

/** Metal with one level: hollows side by side that stand connected, first…last (both included) of the terrain's hollows. */
export interface Pond {
  readonly first: number;
  readonly last: number;
  readonly volume: number;
}

/** Metal running over a crest from one pond into another. */
export interface Passage {
  /** Column whose left side is the crest. */
  readonly face: number;
  /** Lab elevation of the pond that feeds [m]. */
  readonly feeding: number;
  /** Lab elevation of the pond that receives, or of the floor the metal lands on [m]. */
  readonly receiving: number;
}

export interface Settled {
  readonly ponds: readonly Pond[];
  /** Metal that left over a rim [m³]. */
  readonly spilled: number;
  readonly passages: readonly Passage[];
}

/** Overflows smaller than this share of all metal are round-off. */
const ROUND_OFF = 1e-15;
/** Overflows larger than this share count as metal passing. */
const PASSING = 1e-11;

/** Each crest is passed a few times at most; more moves than this are our own mistake. */
const MAX_MOVES = 10_000;

type Outlet = { readonly elevation: number; readonly to: 'left' | 'right' | 'out' };

/**
 * Lets ponds overflow until none stands above its lowest outlet. Metal goes over the lower crest into the
 * neighbour; when the neighbour stands at that crest too, the two become one; over a rim it leaves.
 * Each transfer runs to a lower crest and each union lowers the count, so it ends.
 *
 * @param ponds rising, side by side, together covering all hollows of the terrain
 */
export function settle(terrain: Terrain, ponds: readonly Pond[], metal: number): Settled {
  const state = { ponds: [...ponds], spilled: 0, passages: [] as Passage[] };
  let moves = 0;
  for (let i = 0; i < state.ponds.length; ) {
    if (moves++ > MAX_MOVES)
      throw new Error(
        `level fill: still overflowing after ${MAX_MOVES} moves in ${JSON.stringify(state.ponds)} ${JSON.stringify(terrain.sills)}`,
      );
    const moved = overflowOf(terrain, state, i, metal);
    i = moved ? 0 : i + 1;
  }
  return state;
}

interface Settling {
  ponds: Pond[];
  spilled: number;
  passages: Passage[];
}

function overflowOf(terrain: Terrain, state: Settling, index: number, metal: number): boolean {
  const pond = state.ponds[index]!;
  if (pond.volume <= 0) return false;
  const outlet = lowestOutlet(terrain, pond);
  if (outlet.elevation === Number.POSITIVE_INFINITY) return false;
  const crest = highestCrestInside(terrain, pond);
  if (crest && crest.elevation > outlet.elevation) return partAtCrest(terrain, state, index, crest, outlet);
  const excess = pond.volume - pondVolume(terrain, pond, outlet.elevation);
  if (excess <= ROUND_OFF * metal) return false;
  if (outlet.to === 'out') return leave(state, index, excess);
  return passOn(terrain, state, index, outlet, excess, metal);
}

function leave(state: Settling, index: number, excess: number): boolean {
  const pond = state.ponds[index]!;
  state.ponds[index] = { ...pond, volume: pond.volume - excess };
  state.spilled += excess;
  return true;
}

function passOn(
  terrain: Terrain,
  state: Settling,
  index: number,
  outlet: Outlet,
  excess: number,
  metal: number,
): boolean {
  const pond = state.ponds[index]!;
  const step = outlet.to === 'right' ? 1 : -1;
  const neighbour = state.ponds[index + step]!;
  if (neighbour.volume >= pondVolume(terrain, neighbour, outlet.elevation) - ROUND_OFF * metal) {
    const [left, right] = step > 0 ? [pond, neighbour] : [neighbour, pond];
    const union = { first: left.first, last: right.last, volume: left.volume + right.volume };
    state.ponds.splice(Math.min(index, index + step), 2, union);
    return true;
  }
  if (excess > PASSING * metal) state.passages.push(passageBetween(terrain, pond, neighbour, outlet, metal));
  state.ponds[index] = { ...pond, volume: pond.volume - excess };
  state.ponds[index + step] = { ...neighbour, volume: neighbour.volume + excess };
  return true;
}

function passageBetween(
  terrain: Terrain,
  pond: Pond,
  neighbour: Pond,
  outlet: Outlet,
  metal: number,
): Passage {
  const [from, to] = columnsOfPond(terrain, neighbour);
  const isWet = neighbour.volume > ROUND_OFF * metal;
  return {
    face: outlet.to === 'right' ? columnsOfPond(terrain, pond)[1] + 1 : columnsOfPond(terrain, pond)[0],
    feeding: outlet.elevation,
    receiving: isWet ? levelOf(terrain.levels, from, to, neighbour.volume) : bottomOf(terrain, from, to),
  };
}

/** A pond drained below a crest inside it falls into two: both stand at the crest, the rest has left by the outlet. */
function partAtCrest(
  terrain: Terrain,
  state: Settling,
  index: number,
  crest: Crest,
  outlet: Outlet,
): boolean {
  const pond = state.ponds[index]!;
  const left: Pond = { first: pond.first, last: crest.after - 1, volume: 0 };
  const right: Pond = { first: crest.after, last: pond.last, volume: 0 };
  const inLeft = pondVolume(terrain, left, crest.elevation);
  const inRight = pondVolume(terrain, right, crest.elevation);
  const excess = pond.volume - inLeft - inRight;
  const drainsLeft =
    outlet.to === 'left' || (outlet.to === 'out' && outletIsIn(terrain, left, outlet.elevation));
  state.ponds.splice(
    index,
    1,
    { ...left, volume: inLeft + (drainsLeft ? excess : 0) },
    { ...right, volume: inRight + (drainsLeft ? 0 : excess) },
  );
  return true;
}

const outletIsIn = (terrain: Terrain, pond: Pond, elevation: number) =>
  lowestOutlet(terrain, pond).elevation === elevation;

/** Columns a pond may stand in: from…to, both included. */
export function columnsOfPond(terrain: Terrain, pond: Pond): [number, number] {
  return [terrain.hollows[pond.first]!.from, terrain.hollows[pond.last]!.to];
}

export function pondVolume(terrain: Terrain, pond: Pond, elevation: number): number {
  const [from, to] = columnsOfPond(terrain, pond);
  return volumeOf(terrain.levels, from, to, elevation);
}

function lowestOutlet(terrain: Terrain, pond: Pond): Outlet {
  const [from, to] = columnsOfPond(terrain, pond);
  // Behind a wall that is only the front's stand, metal that does not fit pushes the front on instead of leaving.
  let outlet: Outlet = {
    elevation: terrain.isDammed ? Number.POSITIVE_INFINITY : topOf(terrain, from, to),
    to: 'out',
  };
  for (const rim of terrain.rims) {
    if (rim.column < from || rim.column > to) continue;
    const elevation = rim.x * terrain.sin + rim.y * terrain.cos;
    if (elevation < outlet.elevation) outlet = { elevation, to: 'out' };
  }
  if (from > 0 && terrain.sills[from]! <= outlet.elevation)
    outlet = { elevation: terrain.sills[from]!, to: 'left' };
  const next = to + 1;
  if (next < terrain.columns.length && terrain.sills[next]! <= outlet.elevation)
    outlet = { elevation: terrain.sills[next]!, to: 'right' };
  return outlet;
}

interface Crest {
  readonly elevation: number;
  /** First hollow behind the crest. */
  readonly after: number;
}

export function highestCrestInside(terrain: Terrain, pond: Pond): Crest | null {
  let highest: Crest | null = null;
  for (let k = pond.first + 1; k <= pond.last; k++) {
    const hollow: Hollow = terrain.hollows[k]!;
    const elevation = terrain.sills[hollow.from]!;
    if (!highest || elevation > highest.elevation) highest = { elevation, after: k };
  }
  return highest;
}
