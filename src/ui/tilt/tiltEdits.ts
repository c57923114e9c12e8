import { motionOf } from '$src/core/tilt/motionOf';
import { LEAST_TURN } from '$src/core/tilt/range';
import type { Stage, Tilt } from '$src/core/tilt/tilt';
import { stagesOf, turnsOf } from '$src/core/tilt/turns';
import { fromDegrees } from '$src/core/units';

type Staged = Extract<Tilt, { kind: 'staged' }>;

/** The same turn, told the other way. A staged tilt of several stages becomes steady at its mean rate. */
export function asKind(tilt: Tilt, kind: Tilt['kind']): Tilt {
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

/** Where one stage gives way to the next, the start and the end among them. */
export function knotsOf(tilt: Tilt): readonly { readonly time: number; readonly inclination: number }[] {
  let time = 0;
  const ends = turnsOf(tilt).map((turn) => {
    time += turn.time;
    return { time, inclination: turn.to };
  });
  return [{ time: 0, inclination: tilt.start }, ...ends];
}
