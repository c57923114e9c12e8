import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { foldScore } from '$src/core/watch/foldScore';
import type { PourPlan } from './plan';
import type { Figures, FirstFlow, Fold, FrontSpeeds } from './record';
import type { Watchers } from './watchers';

/** The figures of a pour from what its watchers saw. */
export function figuresOf(
  plan: PourPlan,
  watchers: Watchers,
  folds: readonly Fold[],
  flow: Flow,
  mesh: Mesh,
): Figures {
  const speeds = watchers.front.frontSpeeds();
  const peak = indexOfGreatest(speeds.speed);
  const [half, nine, full] = watchers.fill.times();
  const first = watchers.front.firstFlow();
  const firstFlowTime = watchers.front.startedInDie() ? 0 : (first?.time ?? null);
  return {
    firstFlow: firstFlowOf(watchers),
    peakFrontSpeed: peak === null ? null : speeds.speed[peak]!,
    peakFrontSpeedPlace: peak === null ? null : speeds.place[peak]!,
    peakFrontSpeedTime: peak === null ? null : speeds.time[peak]!,
    peakFrontSpeedInclination: peak === null ? null : speeds.inclination[peak]!,
    shareAboveCritical: shareAbove(speeds, plan.liquid.criticalSpeed),
    arrivalTime: watchers.front.arrival()?.time ?? null,
    stoodAtEnd: watchers.front.startedAtEnd(),
    firstFlowTime,
    filled50Time: half ?? null,
    filled90Time: nine ?? null,
    filledTime: full ?? null,
    fillTime: full != null && firstFlowTime !== null ? full - firstFlowTime : null,
    finalShare: watchers.fill.share(),
    spilled: flow.spilled,
    skinFolded: watchers.contraction.folded(),
    foldScore: foldScore(folds, watchers.contraction.folded(), mesh.facePlace[mesh.cells]!),
    lap: watchers.heat.lap(full != null),
    arrivingTemperature: watchers.heat.arrivingTemperature(),
    gasHeld: (flow.gas?.heldVolume ?? 0) > 0,
    narrowestGasWay: watchers.gasWay.narrowest(),
  };
}

function firstFlowOf(watchers: Watchers): FirstFlow {
  if (watchers.front.startedInDie()) return { kind: 'already in the die' };
  const first = watchers.front.firstFlow();
  return first ? { kind: 'angle', inclination: first.inclination, time: first.time } : { kind: 'never' };
}

function indexOfGreatest(values: Float64Array): number | null {
  let best: number | null = null;
  values.forEach((value, k) => {
    if (best === null || value > values[best]!) best = k;
  });
  return best;
}

/** Share of the measured die path that the front ran above critical speed; null when it was not measured at all. */
function shareAbove(speeds: FrontSpeeds, critical: number): number | null {
  if (speeds.speed.length === 0) return null;
  return speeds.speed.filter((speed) => speed > critical).length / speeds.speed.length;
}
