import { endOf } from '$src/core/tilt/endOf';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { LEAST_TURN } from '$src/core/tilt/range';
import type { Knot, KnotTilt, MachineTilt, Motion, ProgrammedTilt, Stage, Tilt } from '$src/core/tilt/tilt';
import { stagesOf, turnsOf } from '$src/core/tilt/turns';
import { fromDegrees } from '$src/core/units';

type Staged = Extract<Tilt, { kind: 'staged' }>;

/** The same turn, told the other way. A staged tilt of several stages becomes steady at its mean rate. */
export function asKind(tilt: Tilt, kind: Tilt['kind']): Tilt {
  if (tilt.kind === kind) return tilt;
  switch (kind) {
    case 'machine':
      return asMachine(tilt);
    case 'drawn':
    case 'measured':
      return { ...asDrawn(tilt), kind };
    default:
      return asProgrammed('smoothing' in tilt ? tilt : asStages(tilt), kind);
  }
}

const asMachine = (tilt: Tilt): MachineTilt => ({
  kind: 'machine',
  start: tilt.start,
  end: endOf(tilt),
  limits: tilt.limits,
  machine: BENCH_MACHINE,
});

/** Knots at even times, as many as a hand can drag. */
const DRAWN_KNOTS = 8;

function asDrawn(tilt: Tilt): KnotTilt {
  const { start, limits } = tilt;
  if (tilt.kind === 'measured' || tilt.kind === 'drawn') return tilt;
  const motion = motionOf(tilt);
  const knots = Array.from({ length: DRAWN_KNOTS }, (_, index) => {
    const time = (motion.duration * (index + 1)) / DRAWN_KNOTS;
    return { time, inclination: motion.inclinationAt(time) };
  });
  return { kind: 'drawn', start, limits, knots, origin: '' };
}

/** How long the rate changes when a tilt of another kind is told in stages [s]. */
const SHORT_SMOOTHING = 0.2;
const STAGES_FROM_OTHERS = 4;

/** A tilt of any kind told in a few stages that a person can follow: equal turns, each in the time it took. */
export function asStages(tilt: Exclude<Tilt, ProgrammedTilt>, count = STAGES_FROM_OTHERS): Staged {
  const motion = motionOf(tilt);
  const turn = (motion.start - motion.end) / count;
  const stages: Stage[] = [];
  let before = 0;
  for (let k = 1; k <= count; k++) {
    const to = motion.start - turn * k;
    const time = k === count ? motion.duration : timeOf(motion, to);
    stages.push({ to, time: Math.max(time - before, SHORT_SMOOTHING * 2) });
    before = time;
  }
  return { kind: 'staged', start: tilt.start, limits: tilt.limits, smoothing: SHORT_SMOOTHING, stages };
}

/** First time the tilt is at or below an inclination [s], to a two-thousandth of its duration. */
function timeOf(motion: Motion, inclination: number): number {
  const looks = 2000;
  for (let i = 0; i < looks; i++) {
    const time = (motion.duration * i) / looks;
    if (motion.inclinationAt(time) <= inclination) return time;
  }
  return motion.duration;
}

export const moveKnot = (tilt: KnotTilt, index: number, knot: Knot): KnotTilt => ({
  ...tilt,
  knots: tilt.knots.with(index, knot),
});

function asProgrammed(tilt: ProgrammedTilt, kind: ProgrammedTilt['kind']): ProgrammedTilt {
  if (tilt.kind === kind) return tilt;
  const { start, smoothing, limits } = tilt;
  if (kind === 'staged') return { kind, start, smoothing, limits, stages: stagesOf(tilt) };
  const turns = turnsOf(tilt);
  const end = turns.at(-1)?.to ?? limits.lowestEnd;
  const time = turns.reduce((sum, turn) => sum + turn.steadyTime, 0);
  return { kind, start, smoothing, limits, end, rate: orSlow((start - end) / time) };
}

export function setStage(tilt: Staged, index: number, stage: Stage): Staged {
  return { ...tilt, stages: tilt.stages.with(index, stage) };
}

export function removeStage(tilt: Staged, index: number): Staged {
  return { ...tilt, stages: tilt.stages.toSpliced(index, 1) };
}

/** A stage given by its time instead of its rate, or the other way round; the turn stays the same. */
export function togglePace(tilt: Staged, index: number): Staged {
  const turn = turnsOf(tilt)[index];
  if (!turn) return tilt;
  const stage = tilt.stages[index]!;
  if ('time' in stage) return setStage(tilt, index, { to: turn.to, rate: orSlow(turn.rate) });
  const time = Number.isFinite(turn.time) && turn.time > 0 ? turn.time : 1;
  return setStage(tilt, index, { to: turn.to, time });
}

/** Splits the longest stage in the middle, so that the turn is the same until the new stage is changed. */
export function addStage(tilt: Staged): Staged {
  const turns = turnsOf(tilt);
  const longest = turns.reduce(
    (best, turn, index) => (spanOf(turn) > spanOf(turns[best]!) ? index : best),
    0,
  );
  const turn = turns[longest];
  if (!turn || spanOf(turn) < 2 * LEAST_TURN) return appended(tilt);
  const middle = (turn.from + turn.to) / 2;
  const halves: Stage[] = [
    { to: middle, rate: orSlow(turn.rate) },
    { to: turn.to, rate: orSlow(turn.rate) },
  ];
  return { ...tilt, stages: tilt.stages.toSpliced(longest, 1, ...halves) };
}

/** A pace that makes no sense yet, of a stage being typed, is replaced by one that does. */
const SLOW_HAND = fromDegrees(10);
const orSlow = (rate: number): number => (Number.isFinite(rate) && rate > 0 ? rate : SLOW_HAND);

const spanOf = ({ from, to }: { readonly from: number; readonly to: number }): number => from - to;

function appended(tilt: Staged): Staged {
  const last = tilt.stages.at(-1)?.to ?? tilt.start;
  return { ...tilt, stages: [...tilt.stages, { to: last - fromDegrees(10), rate: SLOW_HAND }] };
}

/** One point of a tilt against time, for its chart. */
export interface TiltPoint {
  readonly time: number;
  readonly inclination: number;
  /** How quick it tips [rad/s], positive while tipping. */
  readonly rate: number;
}

/** The tilt sampled evenly over its time; the tilt must be one the machine can do. */
export function samplesOf(tilt: Tilt, count = 240): readonly TiltPoint[] {
  const motion = motionOf(tilt);
  return Array.from({ length: count + 1 }, (_, index) => {
    const time = (motion.duration * index) / count;
    return { time, inclination: motion.inclinationAt(time), rate: Math.abs(motion.rateAt(time)) };
  });
}

/** Where one stage gives way to the next, the start and the end among them; a machine has none between. */
export function knotsOf(tilt: Tilt): readonly Knot[] {
  if (tilt.kind === 'machine') return [{ time: 0, inclination: tilt.start }];
  if (!('smoothing' in tilt)) return [{ time: 0, inclination: tilt.start }, ...tilt.knots];
  let time = 0;
  const ends = turnsOf(tilt).map((turn) => {
    time += turn.time;
    return { time, inclination: turn.to };
  });
  return [{ time: 0, inclination: tilt.start }, ...ends];
}
