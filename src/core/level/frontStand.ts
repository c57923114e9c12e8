import type { Columns } from './columns';
import { type Column, columnLevels } from './columnVolume';
import { volumeOf } from './poolVolume';
import { rootBetween } from './rootBetween';
import { openStandDepth, type Stand, slotStandHeight, standRaise } from './stand';
import { cutColumn, type Terrain } from './terrain';

/** The section's columns turned to one inclination, uncut, and the stand a front needs there. */
export interface StandGround {
  readonly columns: Columns;
  readonly whole: Terrain;
  readonly stand: Stand;
}

export interface FrontMove {
  readonly reach: number;
  /** Whether the front ran on down a slope faster than the pond behind it can follow. */
  readonly ranAway: boolean;
}

/** The pond behind a front: the column it starts at, its volume [m³] and the highest crest it stands across [m]. */
export interface PondBehind {
  readonly from: number;
  readonly volume: number;
  readonly crest: number;
}

/** Fronts nearer than this to a place are there [m]. */
const SAME_FRONT = 1e-12;
/** Far enough to be past a step [m]. */
export const A_HAIR = 1e-11;

/**
 * How far a front moves that has stood at `reach`. It moves while the level behind it stands at least the stand
 * above the floor at the front, and stops where that fails first. Where it has passed a crest and the pond can no
 * longer follow it, it runs on to the foot of the slope.
 */
export function moveFront(ground: StandGround, pond: PondBehind, reach: number): FrontMove {
  const end = ground.columns.columns.at(-1)!.right;
  let place = reach;
  let crest = pond.crest;
  while (place < end) {
    const index = ground.columns.columns.findIndex((column) => column.right > place + SAME_FRONT);
    if (index < 0 || !fills(ground, pond, place, standAtPassage(ground, index, place))) break;
    crest = Math.max(crest, elevationAt(ground, index, place));
    const next = pieceEnd(ground, index, place);
    const standAtNext = standInside(ground, index, next);
    if (!fills(ground, pond, next, Math.max(standAtNext, crest))) {
      if (standAtNext < crest) return { reach: footOfRun(ground, index, place, next), ranAway: true };
      return { reach: stopInside(ground, index, pond, place, next), ranAway: false };
    }
    place = next;
  }
  return { reach: place, ranAway: false };
}

/**
 * Where a floor that falls away from a place ends its fall. Where it rises at once, the foot is just past a step at
 * the place; without one the metal laps over the stretch ahead.
 */
function footOfRun(ground: StandGround, index: number, place: number, next: number): number {
  const { columns } = ground.columns;
  const { sills } = ground.whole;
  const isAtSide = place <= columns[index]!.left + SAME_FRONT;
  let foot = isAtSide ? place + A_HAIR : next;
  let height = elevationAt(ground, index, place);
  for (let i = index; i < columns.length; i++) {
    const end = floorElevation(ground, i, columns[i]!.right);
    if (end >= height || (i > index && sills[i]! > height)) break;
    foot = columns[i]!.right;
    height = end;
  }
  return foot;
}

/** Whether the pond's metal fills the section behind the place up to the elevation. */
function fills(ground: StandGround, pond: PondBehind, place: number, elevation: number): boolean {
  return pond.volume >= volumeBehind(ground, pond.from, place, elevation);
}

function volumeBehind(ground: StandGround, from: number, place: number, elevation: number): number {
  const columns = ground.columns.columns;
  let last = from;
  while (last < columns.length && columns[last]!.right <= place + SAME_FRONT) last++;
  const whole = volumeOf(ground.whole.levels, from, last - 1, elevation);
  const cut = columns[last];
  if (!cut || cut.left >= place - SAME_FRONT) return whole;
  const levels = columnLevels(cutColumn(cut, place), ground.whole.sin, ground.whole.cos);
  return whole + volumeOf([levels], 0, 0, elevation);
}

/** Elevation the level must reach at a place for the front to leave it, in the column ahead [m]. */
function standAtPassage(ground: StandGround, index: number, place: number): number {
  const { columns, sills, tops } = ground.columns;
  const atSide = place <= columns[index]!.left + SAME_FRONT;
  if (!atSide || index === 0) return standInside(ground, index, place);
  const passage = tops[index]! - sills[index]!;
  const isOpen = ground.columns.isOpen[index - 1]! && ground.columns.isOpen[index]!;
  return (
    ground.whole.sills[index]! +
    standRaise(ground.stand, isOpen ? Number.POSITIVE_INFINITY : passage, ground.whole.cos)
  );
}

function standInside(ground: StandGround, index: number, place: number): number {
  const height = ground.columns.isOpen[index]
    ? Number.POSITIVE_INFINITY
    : heightIn(ground.columns.columns[index]!, place);
  return floorElevation(ground, index, place) + standRaise(ground.stand, height, ground.whole.cos);
}

/** Elevation of what metal has to pass at a place: the sill at a column's side, else the floor. */
function elevationAt(ground: StandGround, index: number, place: number): number {
  const atSide = place <= ground.columns.columns[index]!.left + SAME_FRONT;
  return atSide ? ground.whole.sills[index]! : floorElevation(ground, index, place);
}

function floorElevation(ground: StandGround, index: number, place: number): number {
  const column = ground.columns.columns[index]!;
  const part = (place - column.left) / (column.right - column.left);
  const floor = column.floorLeft + (column.floorRight - column.floorLeft) * part;
  return place * ground.whole.sin + floor * ground.whole.cos;
}

function heightIn(column: Column, place: number): number {
  const part = (place - column.left) / (column.right - column.left);
  const left = column.roofLeft - column.floorLeft;
  return left + (column.roofRight - column.floorRight - left) * part;
}

/** End of the stretch ahead over which the stand follows one law and the floor does not drop below where it began. */
function pieceEnd(ground: StandGround, index: number, place: number): number {
  const column = ground.columns.columns[index]!;
  const left = column.roofLeft - column.floorLeft;
  const right = column.roofRight - column.floorRight;
  const { cos } = ground.whole;
  const marks = ground.columns.isOpen[index]
    ? []
    : [openStandDepth(ground.stand, cos), slotStandHeight(ground.stand, cos)];
  const places = marks.map(
    (height) => column.left + ((height - left) / (right - left)) * (column.right - column.left),
  );
  places.push(equalStandPlace(ground, index, place));
  return places.reduce(
    (nearest, mark) => (mark > place + SAME_FRONT && mark < nearest ? mark : nearest),
    column.right,
  );
}

/** Where, on a floor that falls, an open front's stand is down to the elevation it started from. */
function equalStandPlace(ground: StandGround, index: number, place: number): number {
  const here = elevationAt(ground, index, place);
  const column = ground.columns.columns[index]!;
  const atEnd = standInside(ground, index, column.right) - here;
  const atStart = standInside(ground, index, place) - here;
  if (atStart <= 0 || atEnd >= 0) return Number.NaN;
  return place + ((column.right - place) * atStart) / (atStart - atEnd);
}

/** The place between one the front leaves and one it cannot reach where level and stand balance. */
function stopInside(
  ground: StandGround,
  index: number,
  pond: PondBehind,
  leaves: number,
  stops: number,
): number {
  const missing = (place: number) =>
    volumeBehind(ground, pond.from, place, standInside(ground, index, place)) - pond.volume;
  return rootBetween(missing, leaves, stops, SAME_FRONT);
}
