import { fromDegrees, toDegrees } from '$src/core/units';
import { motionOf } from './motionOf';
import { usableLimits } from './range';
import type { MachineLimits, Motion, PlainTilt, ProgrammedTilt, Stage } from './tilt';
import { restTime } from './turns';

export type StagedTilt = Extract<ProgrammedTilt, { readonly kind: 'staged' }>;

/** How long the rate changes when a tilt of another kind is told in stages [s]. */
const SHORT_SMOOTHING = 0.2;
/** As many as a person can keep in the head. */
export const MOST_TOLD = 6;
/** Nearer than this and one stage fewer is worth more than a closer telling [rad]. */
const NEAR_ENOUGH = fromDegrees(0.5);
/** More stages have to come nearer by this much, the least that is told of a stray [rad]. */
const WORTH = fromDegrees(0.1);
/** Instants at which one stage may give way to the next, at most; they lie on tenths of a second. */
const INSTANTS = 120;
const TENTHS = 10;
/** A shorter stage than this cannot be followed by hand [s]. */
const SHORTEST = 0.4;

/**
 * A tilt of any kind told in a few stages that a person can follow: straight lines between instants of the tilt, those
 * whose greatest stray in inclination is least over all choices of the instants. As few stages as come within 0.5° of
 * the tilt, or else, up to `most`, the number that comes nearest. Inclinations come in tenths of a degree and times in
 * tenths of a second, as a shop can set them.
 */
export function asStages(tilt: Exclude<PlainTilt, ProgrammedTilt>, most = MOST_TOLD): StagedTilt {
  const motion = motionOf(tilt);
  const instants = instantsOf(motion);
  const straying = strayingOf(instants, motion);
  let best = toldIn(1);
  for (let count = 2; count <= Math.min(most, mostStages(motion)); count++) {
    if (best.stray <= NEAR_ENOUGH) break;
    const told = toldIn(count);
    if (told.stray < best.stray - WORTH) best = told;
  }
  return best.stages;

  function toldIn(count: number): { stages: StagedTilt; stray: number } {
    const ends = bestEnds(instants, straying, count);
    const stages: StagedTilt = {
      kind: 'staged',
      start: tilt.start,
      limits: tilt.limits,
      smoothing: SHORT_SMOOTHING,
      stages: stagesBetween(instants, ends, usableLimits(tilt.limits)),
    };
    return { stages, stray: greatestStray(tilt, stages) };
  }
}

const LOOKS = 400;

/** How far two tilts are apart in inclination at most, over the time of the longer one [rad]. */
export function greatestStray(one: PlainTilt, other: PlainTilt): number {
  const [a, b] = [motionOf(one), motionOf(other)];
  const time = Math.max(a.duration, b.duration);
  let most = 0;
  for (let i = 0; i <= LOOKS; i++) {
    const at = (time * i) / LOOKS;
    most = Math.max(most, Math.abs(a.inclinationAt(at) - b.inclinationAt(at)));
  }
  return most;
}

interface Instant {
  readonly time: number;
  readonly inclination: number;
}

/** On tenths of a second, every one or every few, the last as the tilt has come to rest. */
function instantsOf({ duration, inclinationAt }: Motion): readonly Instant[] {
  const tenths = Math.max(1, Math.ceil(duration * TENTHS - 1e-6));
  const every = Math.ceil(tenths / INSTANTS);
  const count = Math.ceil(tenths / every);
  return Array.from({ length: count + 1 }, (_, i) => {
    const time = Math.min(i * every, tenths) / TENTHS;
    return { time, inclination: inclinationAt(time) };
  });
}

const mostStages = ({ duration }: Motion): number => Math.max(1, Math.floor(duration / SHORTEST));

type Straying = (from: number, to: number) => { readonly most: number; readonly sum: number };

/** The cheapest way to an instant: its greatest stray, among equal ones the least squares, and where its stages end. */
interface Way {
  readonly most: number;
  readonly sum: number;
  readonly ends: readonly number[];
}

const NO_WAY: Way = { most: Number.POSITIVE_INFINITY, sum: Number.POSITIVE_INFINITY, ends: [] };
const isBetter = (a: Way, b: Way): boolean => a.most < b.most || (a.most === b.most && a.sum < b.sum);

/** Indices where stages end, the start among them: the best way through, built up stage by stage. */
function bestEnds(instants: readonly Instant[], straying: Straying, count: number): readonly number[] {
  const last = instants.length - 1;
  let best: readonly Way[] = instants.map((_, to) => (to === 0 ? { most: 0, sum: 0, ends: [0] } : NO_WAY));
  for (let stage = 0; stage < count; stage++) {
    best = instants.map((_, to) => {
      let found = NO_WAY;
      for (let from = 0; from < to; from++) {
        const before = best[from]!;
        const { most, sum } = straying(from, to);
        const way = { most: Math.max(before.most, most), sum: before.sum + sum, ends: before.ends };
        if (isBetter(way, found)) found = { ...way, ends: [...before.ends, to] };
      }
      return found;
    });
  }
  return best[last]!.most < Number.POSITIVE_INFINITY ? best[last]!.ends : [0, last];
}

/** How far a straight stage between two instants strays; too short a stage is none. Worked out once for each pair. */
function strayingOf(instants: readonly Instant[], { duration }: Motion): Straying {
  const shortest = Math.min(SHORTEST, duration);
  const table = instants.map((a, from) =>
    instants.map((b, to) => {
      const time = b.time - a.time;
      if (time < shortest - 1e-9) return NO_WAY;
      let [most, sum] = [0, 0];
      for (let i = from + 1; i < to; i++) {
        const share = (instants[i]!.time - a.time) / time;
        const stray = instants[i]!.inclination - a.inclination - share * (b.inclination - a.inclination);
        most = Math.max(most, Math.abs(stray));
        sum += stray ** 2;
      }
      return { most, sum };
    }),
  );
  return (from, to) => table[from]![to]!;
}

/** Less turn than this is a pause [rad]: its time goes to the stage after it. */
const PAUSE = 1e-3;

type TimedStage = Extract<Stage, { readonly time: number }>;

/** The stages between those instants, each in the time it took, within the machine's rates. */
function stagesBetween(
  instants: readonly Instant[],
  ends: readonly number[],
  limits: MachineLimits,
): Stage[] {
  const turns: [from: Instant, to: Instant][] = [];
  let from = instants[0]!;
  for (const end of ends.slice(1)) {
    const to = settable(instants[end]!, limits);
    if (from.inclination - to.inclination <= PAUSE) continue;
    turns.push([from, to]);
    from = to;
  }
  return turns.map(([a, b], i) => inTime(a, b, restTime(i, turns.length, SHORT_SMOOTHING), limits));
}

const toTenth = (value: number): number => Math.round(value * TENTHS) / TENTHS;

const settable = ({ time, inclination }: Instant, { lowestEnd }: MachineLimits): Instant => ({
  time,
  inclination: Math.max(fromDegrees(toTenth(toDegrees(inclination))), lowestEnd),
});

/** The nearest tenth of a second between two times [s], or the nearer of them where there is none. */
function tenthWithin(time: number, least: number, most: number): number {
  const [low, high] = [Math.ceil(least * TENTHS - 1e-6), Math.floor(most * TENTHS + 1e-6)];
  if (low > high) return Math.min(Math.max(time, least), most);
  return Math.min(Math.max(Math.round(time * TENTHS), low), high) / TENTHS;
}

function inTime(from: Instant, to: Instant, rest: number, { slowest, quickest }: MachineLimits): TimedStage {
  const turn = from.inclination - to.inclination;
  const least = Math.max(SHORTEST, turn / quickest + rest);
  return { to: to.inclination, time: tenthWithin(to.time - from.time, least, turn / slowest + rest) };
}
