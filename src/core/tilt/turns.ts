import type { ProgrammedTilt, Stage } from './tilt';

/**
 * One stage worked out. The rate is steady over `steadyTime` and blends into its neighbours; the first and last
 * stage take half a smoothing longer, because they also come up from rest or go back to it.
 */
export interface Turn {
  readonly from: number;
  readonly to: number;
  /** Steady rate, positive [rad/s]. */
  readonly rate: number;
  /** (from − to)/rate [s]. */
  readonly steadyTime: number;
  /** Time from knot to knot [s]. */
  readonly time: number;
}

/** The stages of a tilt; a steady tilt is one stage. */
export function stagesOf(tilt: ProgrammedTilt): readonly Stage[] {
  return tilt.kind === 'steady' ? [{ to: tilt.end, rate: tilt.rate }] : tilt.stages;
}

/** Time a stage spends on coming up from rest and going back to it [s]. */
export function restTime(index: number, count: number, smoothing: number): number {
  return ((index === 0 ? smoothing : 0) + (index === count - 1 ? smoothing : 0)) / 2;
}

export function turnsOf(tilt: ProgrammedTilt): Turn[] {
  const stages = stagesOf(tilt);
  return stages.map((stage, index) => {
    const from = index === 0 ? tilt.start : stages[index - 1]!.to;
    const rest = restTime(index, stages.length, tilt.smoothing);
    return turnOf(from, stage, rest);
  });
}

function turnOf(from: number, stage: Stage, rest: number): Turn {
  const { to } = stage;
  const steadyTime = 'rate' in stage ? (from - to) / stage.rate : stage.time - rest;
  return { from, to, rate: (from - to) / steadyTime, steadyTime, time: steadyTime + rest };
}
