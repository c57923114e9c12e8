import { motionOf } from './motionOf';
import { usableLimits } from './range';
import type { MachineLimits, Motion, PlainTilt, ProgrammedTilt, Stage } from './tilt';

export type StagedTilt = Extract<ProgrammedTilt, { readonly kind: 'staged' }>;

/** How long the rate changes when a tilt of another kind is told in stages [s]. */
const SHORT_SMOOTHING = 0.2;
/** As many as a person can keep in the head. */
export const FEW_STAGES = 4;
/** Instants at which one stage may give way to the next. */
const INSTANTS = 60;
/** A shorter stage than this cannot be followed by hand [s]. */
const SHORTEST = 0.4;

/**
 * A tilt of any kind told in a few stages that a person can follow: straight lines between instants of the tilt,
 * chosen so that the inclination strays least from it (least squares, over all choices of those instants).
 */
export function asStages(tilt: Exclude<PlainTilt, ProgrammedTilt>, count = FEW_STAGES): StagedTilt {
  const motion = motionOf(tilt);
  const instants = Array.from({ length: INSTANTS + 1 }, (_, i) => {
    const time = (motion.duration * i) / INSTANTS;
    return { time, inclination: motion.inclinationAt(time) };
  });
  const ends = bestEnds(instants, motion, Math.min(count, mostStages(motion)));
  const stages = stagesBetween(instants, ends, usableLimits(tilt.limits));
  return { kind: 'staged', start: tilt.start, limits: tilt.limits, smoothing: SHORT_SMOOTHING, stages };
}

interface Instant {
  readonly time: number;
  readonly inclination: number;
}

const mostStages = ({ duration }: Motion): number => Math.max(1, Math.floor(duration / SHORTEST));

/** Indices where stages end, the start among them: the cheapest way through, built up stage by stage. */
function bestEnds(instants: readonly Instant[], motion: Motion, count: number): number[] {
  const last = instants.length - 1;
  const straying = strayingOf(instants, motion);
  let best = instants.map((_, to) => ({ cost: to === 0 ? 0 : Number.POSITIVE_INFINITY, ends: [0] }));
  for (let stage = 0; stage < count; stage++) {
    best = instants.map((_, to) => {
      let found = { cost: Number.POSITIVE_INFINITY, ends: [0] };
      for (let from = 0; from < to; from++) {
        const cost = best[from]!.cost + straying(from, to);
        if (cost < found.cost) found = { cost, ends: [...best[from]!.ends, to] };
      }
      return found;
    });
  }
  return best[last]!.cost < Number.POSITIVE_INFINITY ? best[last]!.ends : [0, last];
}

/** How far a straight stage between two instants strays, squared and summed; too short a stage is none. */
function strayingOf(
  instants: readonly Instant[],
  { duration }: Motion,
): (from: number, to: number) => number {
  const shortest = Math.min(SHORTEST, duration);
  return (from, to) => {
    const [a, b] = [instants[from]!, instants[to]!];
    const time = b.time - a.time;
    if (time < shortest - 1e-9) return Number.POSITIVE_INFINITY;
    let sum = 0;
    for (let i = from + 1; i < to; i++) {
      const share = (instants[i]!.time - a.time) / time;
      sum += (instants[i]!.inclination - a.inclination - share * (b.inclination - a.inclination)) ** 2;
    }
    return sum;
  };
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
  const stages: TimedStage[] = [];
  let from = instants[0]!;
  for (const end of ends.slice(1)) {
    const to = instants[end]!;
    if (from.inclination - to.inclination <= PAUSE) continue;
    stages.push(inTime(from, to, limits));
    from = to;
  }
  return stages;
}

function inTime(from: Instant, to: Instant, { slowest, quickest }: MachineLimits): TimedStage {
  const turn = from.inclination - to.inclination;
  const least = turn / quickest + SHORT_SMOOTHING;
  return {
    to: to.inclination,
    time: Math.min(Math.max(to.time - from.time, SHORTEST, least), turn / slowest),
  };
}
