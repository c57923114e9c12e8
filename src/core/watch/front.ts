import { cosine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';
import type { Liquid } from '$src/core/pour/plan';
import type { FrontSpeeds } from '$src/core/pour/record';
import { foldsOverCritical } from './overCritical';
import { PLACE_STEP, type Sample } from './sample';
import { tonguesOf } from './tongue';
import type { Watcher } from './watcher';

/** Window over which the front speed is taken [m]; a fifth of the die when that is shorter. */
const WINDOW = 20e-3;
const MICRO = 1e-9;
/** A front this near the end wall touches it [m]. */
const TOUCH = 1e-4;

/** What the front watcher knows when the pour is over. */
export interface FrontWatch extends Watcher {
  frontSpeeds(): FrontSpeeds;
  /** When the front passed the mouth [s]; null = never; 0 = it stood in the die at the start. */
  firstFlow(): { time: number; inclination: number } | null;
  startedInDie(): boolean;
  /** Whether the front stood at the end wall before the tilt began. */
  startedAtEnd(): boolean;
  /** When the front reached the die end [s]; null = it did not, or stood there before the tilt began. */
  arrival(): { time: number; inclination: number } | null;
}

interface Crossing {
  readonly time: number;
  readonly inclination: number;
  readonly depth: number;
  readonly fullness: number;
  readonly froude: number;
  /** Greatest speed of the metal in the 20 mm behind [m/s]. */
  readonly quickest: number;
}

/**
 * Front place and speed. Speed at a place is the window divided by the time between the front's first crossings
 * of its two ends, every 5 mm: a definition that does not move with the mesh. It is never more than the metal's own
 * greatest speed there: a film that thickens past 1 mm in many places at once is not a front that raced over them.
 */
export function watchFront(
  dieLength: number,
  liquid: Pick<Liquid, 'criticalSpeed' | 'surfaceTension' | 'density'>,
): FrontWatch {
  const window = Math.min(WINDOW, dieLength / 5);
  const places = Math.floor(dieLength / PLACE_STEP + MICRO) + 1;
  const windowSteps = Math.max(1, Math.round(window / PLACE_STEP));
  const crossings: (Crossing | null)[] = Array.from({ length: places }, () => null);
  let next = 0;
  let before: Place | null = null;
  let startedInDie = false;
  let startedAtEnd = false;
  let arrival: { time: number; inclination: number } | null = null;

  /** A front that touches the end wall has come all the way: it cannot pass it. */
  const placeOf = (k: number): number => Math.min(k * PLACE_STEP, dieLength - TOUCH - MICRO);

  function look(sample: Sample): void {
    const touches = sample.front >= dieLength - TOUCH;
    if (before === null) {
      startedInDie = sample.front > 0;
      startedAtEnd = touches;
    }
    const from = before ?? placeIn(sample, 0);
    while (next < places && sample.front > placeOf(next) + MICRO) {
      crossings[next] = before === null ? null : crossingAt(placeOf(next), from, sample, touches);
      next++;
    }
    if (arrival === null && before !== null && !startedAtEnd && touches)
      arrival = { time: sample.time, inclination: sample.inclination };
    before = placeIn(sample, before ? (sample.front - before.front) / (sample.time - before.time) : 0);
  }

  function frontSpeeds(): FrontSpeeds {
    const rows: (Crossing & { place: number; speed: number })[] = [];
    for (let k = windowSteps; k < places; k++) {
      const start = crossings[k - windowSteps];
      const end = crossings[k];
      if (!start || !end || end.time <= start.time) continue;
      const length = placeOf(k) - placeOf(k - windowSteps);
      rows.push({
        ...end,
        place: (k - windowSteps / 2) * PLACE_STEP,
        speed: Math.min(length / (end.time - start.time), quickestBetween(crossings, k - windowSteps, k)),
      });
    }
    return {
      place: Float64Array.from(rows, (row) => row.place),
      speed: Float64Array.from(rows, (row) => row.speed),
      time: Float64Array.from(rows, (row) => row.time),
      inclination: Float64Array.from(rows, (row) => row.inclination),
      depth: Float64Array.from(rows, (row) => row.depth),
      fullness: Float64Array.from(rows, (row) => row.fullness),
      froude: Float64Array.from(rows, (row) => row.froude),
      window: windowSteps * PLACE_STEP,
    };
  }

  return {
    name: 'front',
    look,
    frontSpeeds,
    firstFlow: () => (startedInDie ? null : (crossings[0] ?? null)),
    startedInDie: () => startedInDie,
    startedAtEnd: () => startedAtEnd,
    arrival: () => arrival,
    folds: () => {
      const speeds = frontSpeeds();
      return [...foldsOverCritical(speeds, liquid), ...tonguesOf(speeds, dieLength)];
    },
  };
}

function quickestBetween(crossings: readonly (Crossing | null)[], first: number, last: number): number {
  let quickest = 0;
  for (let k = first; k <= last; k++) quickest = Math.max(quickest, crossings[k]?.quickest ?? 0);
  return quickest;
}

/** Where the front was at a look, and how fast it had run since the look before [m/s]. */
interface Place {
  readonly time: number;
  readonly front: number;
  readonly inclination: number;
  readonly speed: number;
}

const placeIn = ({ time, front, inclination }: Sample, speed: number): Place => ({
  time,
  front,
  inclination,
  speed,
});

function crossingAt(place: number, before: Place, sample: Sample, touches: boolean): Crossing {
  const moved = movedBetween(before, sample, touches);
  const share = moved > 0 ? Math.min(1, Math.max(0, (place - before.front) / moved)) : 1;
  return {
    time: before.time + share * (sample.time - before.time),
    inclination: before.inclination + share * (sample.inclination - before.inclination),
    ...stretchBehind(sample, place),
  };
}

/** A front that the end wall stopped between two looks is taken to have run up to it as fast as before. */
function movedBetween(before: Place, sample: Sample, touches: boolean): number {
  const moved = sample.front - before.front;
  return touches ? Math.max(moved, before.speed * (sample.time - before.time)) : moved;
}

/** The 20 mm behind a place: mean depth [m], share of the opening that is full, Froude number of its mean speed. */
function stretchBehind(
  sample: Sample,
  place: number,
): { depth: number; fullness: number; froude: number; quickest: number } {
  const { profile } = sample;
  const last = Math.min(profile.places - 1, Math.max(0, Math.floor(place / profile.spacing)));
  const first = Math.max(0, last - Math.round(WINDOW / profile.spacing));
  let metal = 0;
  let room = 0;
  let momentum = 0;
  let quickest = 0;
  for (let k = first; k <= last; k++) {
    metal += profile.depth[k]!;
    room += profile.opening[k]!;
    momentum += profile.depth[k]! * profile.speed[k]!;
    quickest = Math.max(quickest, Math.abs(profile.speed[k]!));
  }
  const depth = metal / (last - first + 1);
  const speed = metal > 0 ? momentum / metal : 0;
  const normalGravity = GRAVITY * Math.max(cosine(sample.inclination), 0.05);
  return {
    depth,
    fullness: room > 0 ? metal / room : 0,
    froude: depth > 0 ? Math.abs(speed) / Math.sqrt(normalGravity * depth) : 0,
    quickest,
  };
}
