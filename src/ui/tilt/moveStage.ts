import type { Knot, Stage, Tilt } from '$src/core/tilt/tilt';
import { restTime, turnsOf } from '$src/core/tilt/turns';

type Steady = Extract<Tilt, { kind: 'steady' }>;
type Staged = Extract<Tilt, { kind: 'staged' }>;

/** No stage is made shorter than this, its smoothing left aside [s]. */
export const SHORTEST_TURN = 0.05;

/** The end of a stage dragged to a time and an inclination; it stays given by rate or by time, as it was. */
export function moveStage(tilt: Staged, index: number, knot: Knot): Staged {
  const stage = tilt.stages[index];
  if (!stage) return tilt;
  const turns = turnsOf(tilt);
  const before = turns.slice(0, index).reduce((sum, turn) => sum + turn.time, 0);
  const rest = restTime(index, tilt.stages.length, tilt.smoothing);
  const steadyTime = Math.max(SHORTEST_TURN, knot.time - before - rest);
  const to = knot.inclination;
  const moved: Stage =
    'time' in stage ? { to, time: steadyTime + rest } : { to, rate: (turns[index]!.from - to) / steadyTime };
  return { ...tilt, stages: tilt.stages.with(index, moved) };
}

/** The end of a steady tilt dragged to a time and an inclination. */
export function moveEnd(tilt: Steady, { time, inclination }: Knot): Steady {
  const steadyTime = Math.max(SHORTEST_TURN, time - restTime(0, 1, tilt.smoothing));
  return { ...tilt, end: inclination, rate: (tilt.start - inclination) / steadyTime };
}
