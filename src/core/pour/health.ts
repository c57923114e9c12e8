import { type Flow, totalVolume } from '$src/core/flow/flow';
import type { Outcome } from './record';
import type { Run } from './run';

/** Metal this quick is not metal any more: something broke [m/s]. */
const BROKEN_SPEED = 20;
/** Relative volume drift at which a run is stopped; round-off is ten thousand times smaller. */
const BROKEN_DRIFT = 1e-10;

/** A broken state must not be reported as an arrival, so this comes before the watchers. */
export function checkHealth(run: Run): Outcome | null {
  const { flow } = run;
  const quickest = greatestSpeed(flow);
  if (!(quickest <= BROKEN_SPEED))
    return {
      kind: 'stopped',
      reason: `Metal speed became ${quickest.toPrecision(3)} m/s at ${run.time.toFixed(3)} s: the model does not hold here.`,
    };
  run.speedNow = quickest;
  run.greatestSpeed = Math.max(run.greatestSpeed, quickest);
  const drift = Math.abs((totalVolume(flow) + flow.spilled) / run.volumeAtStart - 1);
  run.drift = Math.max(run.drift, drift);
  if (!(drift <= BROKEN_DRIFT))
    return {
      kind: 'stopped',
      reason: `Metal was lost or made: volume off by ${drift.toExponential(1)} at ${run.time.toFixed(3)} s.`,
    };
  return null;
}

/** Greatest speed anywhere [m/s]; NaN when any is no number. Metal outside the active cells is at rest. */
function greatestSpeed({ speed, activeFrom, activeTo }: Flow): number {
  let quickest = 0;
  for (let j = activeFrom; j <= activeTo + 1; j++) {
    const size = Math.abs(speed[j]!);
    if (!(size <= quickest)) quickest = size;
    if (Number.isNaN(size)) break;
  }
  return quickest;
}
