import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import type { Rest } from './carry';
import { columnsOf } from './columns';
import { type FirstFlow, firstFlowOf, IN_THE_DIE } from './firstFlow';
import { type Pool, poolsOf } from './pools';
import type { Stand } from './stand';
import { turnable } from './terrain';
import { type Fill, ladle, type Tilted, tiltTo } from './tiltTo';

/** The level fill over a tilt: what a very slow pour would do. Samples lie ≤ 0.25° apart, with one at each event. */
export interface LevelPath {
  /** Falling [rad]. */
  readonly inclination: Float64Array;
  /** Foremost metal on the floor, from the mouth along the axis [m]; negative in the basin. */
  readonly front: Float64Array;
  /** Share of the cavity that is full, 0 to 1. */
  readonly share: Float64Array;
  /** Height metal falls from pool to pool while it passes [m]; 0 when nothing passes. */
  readonly fall: Float64Array;
  /** Metal that has left over a rim so far [m³]. */
  readonly spilled: Float64Array;
  readonly pools: readonly (readonly Pool[])[];
  readonly firstFlow: FirstFlow;
}

const STEP = fromDegrees(0.25);
/** Events are found to within this inclination [rad], a tenth of a microdegree. */
const EVENT_WIDTH = 2e-9;
/** Events looked for in one step; a pool that hovers at a crest may cross it over and over by round-off. */
const MAX_EVENTS = 6;

/**
 * Level fill of a volume ladled behind the mouth at `start` and turned slowly to `end`, with its history: pools,
 * spills from pool to pool, partings and metal over rims.
 *
 * Valid from +75° to −100°; the section must have passed `checkSection`.
 *
 * @param volume of metal [m³]
 * @param start, end inclinations [rad], start ≥ end
 * @param stand capillary stand of the front; null for none
 * @param isOver tells by the front's place [m] that no more of the path is wanted; it then ends with that step
 */
export function levelPath(
  section: Section,
  volume: number,
  start: number,
  end: number,
  stand: Stand | null,
  isOver: (front: number) => boolean = () => false,
): LevelPath {
  const columns = columnsOf(section);
  const fill: Fill = { columns, turnable: turnable(columns), metal: volume, stand };
  const path = emptyPath();
  let tilted = ladle(fill, start);
  note(path, fill, tilted);
  for (const inclination of inclinationsBetween(start, end)) {
    if (isOver(path.front.at(-1)!)) break;
    let next = tiltTo(fill, tilted.rest, inclination);
    for (let event = 0; event < MAX_EVENTS && differs(fill, tilted, next); event++) {
      if (tilted.rest.inclination - inclination <= EVENT_WIDTH) break;
      const after = stateOf(fill, next);
      tilted = passEvent(fill, tilted, inclination);
      note(path, fill, tilted);
      next = tiltTo(fill, tilted.rest, inclination);
      // A flow that swells from nothing may not show yet just past its event: it is found all the same.
      if (!next.cameApart && stateOf(fill, next) === after) break;
    }
    tilted = next;
    note(path, fill, tilted);
  }
  return finish(path, cavityVolume(section));
}

function inclinationsBetween(start: number, end: number): number[] {
  const marks = [start, ...[0, -Math.PI / 2].filter((mark) => mark < start && mark > end), end];
  const inclinations: number[] = [];
  for (let k = 1; k < marks.length; k++) {
    const from = marks[k - 1]!;
    const to = marks[k]!;
    const steps = Math.ceil((from - to) / STEP - 1e-9);
    for (let i = 1; i <= steps; i++) inclinations.push(i === steps ? to : from + ((to - from) * i) / steps);
  }
  return inclinations;
}

/** What must stay the same over a step for the step to be smooth. */
function stateOf(fill: Fill, { rest, passages }: Tilted): string {
  const wet = rest.ponds
    .filter((pond) => pond.volume > 0)
    .map((pond) => `${rest.terrain.hollows[pond.first]!.from}-${rest.terrain.hollows[pond.last]!.to}`);
  const { front, end } = placesOf(fill, rest);
  return `${wet.length} ${passages.map((passage) => passage.face)} ${front > IN_THE_DIE} ${front >= end - IN_THE_DIE}`;
}

function differs(fill: Fill, before: Tilted, after: Tilted): boolean {
  return after.cameApart || stateOf(fill, before) !== stateOf(fill, after);
}

/** Halves down to the event between a rest and a later inclination; returns the rest just past it. */
function passEvent(fill: Fill, before: Tilted, inclination: number): Tilted {
  let low = before;
  let past = inclination;
  while (low.rest.inclination - past > EVENT_WIDTH) {
    const middle = (low.rest.inclination + past) / 2;
    const tried = tiltTo(fill, low.rest, middle);
    if (differs(fill, before, tried)) past = middle;
    else low = tried;
  }
  return tiltTo(fill, low.rest, past);
}

interface GrowingPath {
  readonly inclination: number[];
  readonly front: number[];
  readonly inDie: number[];
  readonly fall: number[];
  readonly spilled: number[];
  readonly pools: Pool[][];
}

const emptyPath = (): GrowingPath => ({
  inclination: [],
  front: [],
  inDie: [],
  fall: [],
  spilled: [],
  pools: [],
});

function note(path: GrowingPath, fill: Fill, { rest, passages }: Tilted): void {
  path.inclination.push(rest.inclination);
  path.front.push(placesOf(fill, rest).front);
  path.inDie.push(inDie(fill, rest));
  path.fall.push(
    passages.reduce((greatest, passage) => Math.max(greatest, passage.feeding - passage.receiving), 0),
  );
  path.spilled.push(rest.spilled);
  path.pools.push(poolsOf(rest, fill.metal));
}

function placesOf(fill: Fill, rest: Rest): { front: number; end: number } {
  const { columns, mouth } = fill.columns;
  const foremost = poolsOf(rest, fill.metal).at(-1)?.to ?? columns[0]!.left;
  return { front: foremost - mouth, end: columns.at(-1)!.right - mouth };
}

function inDie(fill: Fill, rest: Rest): number {
  return rest.inColumn.reduce(
    (sum, volume, i) =>
      fill.columns.columns[i]!.left >= fill.columns.mouth - IN_THE_DIE ? sum + volume : sum,
    0,
  );
}

function finish(path: GrowingPath, cavity: number): LevelPath {
  const inclination = Float64Array.from(path.inclination);
  const front = Float64Array.from(path.front);
  return {
    inclination,
    front,
    share: Float64Array.from(path.inDie, (volume) => volume / cavity),
    fall: Float64Array.from(path.fall),
    spilled: Float64Array.from(path.spilled),
    pools: path.pools,
    firstFlow: firstFlowOf(inclination, front),
  };
}
