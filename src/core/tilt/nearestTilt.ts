import { LEAST_TURN, MOST_STAGES, ROUNDING, usableLimits } from './range';
import type { MachineLimits, ProgrammedTilt, Stage, SteadyTilt } from './tilt';
import { restTime, stagesOf } from './turns';

/**
 * The nearest tilt the machine can do: inclinations brought inside the limits and put in falling order, rates and
 * times brought inside the range, smoothing shortened to what the stages leave room for. All fields must be numbers
 * and the limits must leave room. A tilt that is feasible already comes back as it is, but for rounding.
 */
export function nearestTilt(tilt: ProgrammedTilt): ProgrammedTilt {
  const limits = usableLimits(tilt.limits);
  const angles = fallingAngles(isStartTooLow(tilt) ? { ...tilt, start: 0 } : tilt, limits);
  const kept = stagesOf(tilt).slice(0, angles.length - 1);
  // An empty tilt gets one stage; twenty seconds is what a hand would take.
  const stages = kept.length > 0 ? kept : [{ to: 0, time: 20 }];
  const { paced, smoothing } = pacedStages(angles, stages, tilt.smoothing, limits);
  const start = angles[0]!;
  if (tilt.kind === 'staged') return { ...tilt, start, smoothing, stages: paced };
  const only = paced[0]!;
  return { ...tilt, start, smoothing, end: only.to, rate: 'rate' in only ? only.rate : tilt.rate };
}

/** A steady tilt that would start below level and not above its end: the start is the slip, and level the nearest sensible one. */
export const isStartTooLow = (tilt: ProgrammedTilt): tilt is SteadyTilt =>
  tilt.kind === 'steady' && tilt.start < 0 && tilt.end < 0 && tilt.start - tilt.end < LEAST_TURN - ROUNDING;

/** Start and ends of the stages, falling, inside the limits, at least two. */
function fallingAngles(tilt: ProgrammedTilt, { highestStart, lowestEnd }: MachineLimits): number[] {
  const wanted = [tilt.start, ...stagesOf(tilt).map((stage) => stage.to)];
  const inside = wanted.map((angle) => Math.min(Math.max(angle, lowestEnd), highestStart));
  const falling: number[] = [];
  for (const angle of inside.sort((a, b) => b - a)) {
    const before = falling[falling.length - 1];
    if (before === undefined || before - angle >= LEAST_TURN) falling.push(angle);
  }
  if (falling.length > 1) return falling.slice(0, MOST_STAGES + 1);
  const only = falling[0]!;
  return only - LEAST_TURN >= lowestEnd ? [only, only - LEAST_TURN] : [only + LEAST_TURN, only];
}

interface Paced {
  readonly paced: readonly Stage[];
  readonly smoothing: number;
}

function pacedStages(
  angles: readonly number[],
  stages: readonly Stage[],
  wished: number,
  limits: MachineLimits,
): Paced {
  const steadyTime = (index: number, smoothing: number): number => {
    const stage = stages[index]!;
    const turned = angles[index]! - angles[index + 1]!;
    const asked =
      'rate' in stage
        ? turned / Math.max(stage.rate, 0)
        : stage.time - restTime(index, stages.length, smoothing);
    return Math.min(Math.max(asked, turned / limits.quickest), turned / limits.slowest);
  };
  // Less smoothing leaves a timed stage longer, so one pass is enough.
  const wishedTimes = stages.map((_, index) => steadyTime(index, Math.max(wished, 0)));
  const smoothing = Math.min(Math.max(wished, 0), ...wishedTimes);
  const paced = stages.map((stage, index): Stage => {
    const to = angles[index + 1]!;
    const time = steadyTime(index, smoothing);
    if ('rate' in stage) return { to, rate: Math.min(Math.max(stage.rate, limits.slowest), limits.quickest) };
    return { to, time: time + restTime(index, stages.length, smoothing) };
  });
  return { paced, smoothing };
}
