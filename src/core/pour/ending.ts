import type { Outcome } from './record';
import type { Run } from './run';

/** Still for this long after the body has come to rest ends the run. */
const QUIET_TIME = 0.1;
const QUIET_SPEED = 5e-3;
/** Share of the metal that may still leave over a rim in one look of a quiet pour. */
const SPILLING_SHARE = 1e-6;
const FULL_ENOUGH = 0.995;
/** In a filled cavity metal slower than this has nothing left to do but follow the body [m/s]: it folds nothing, see docs/model.md. */
const CALM_SPEED = 0.02;
/** A front that has stood stiff for this long only gets colder [s]. */
const STIFF_TIME = 1;

/** What is still to come folds nothing: the cavity is full, and its metal but follows the body. */
export function isFullAndCalm({ watchers, speedNow }: Run): boolean {
  return speedNow < CALM_SPEED && watchers.fill.share() >= FULL_ENOUGH;
}

/** Whether the run is over after a look, and how; null while it goes on. `limit` is when it gives up [s]. */
export function ending(run: Run, limit: number): Outcome | null {
  if (run.plan.computation.endsWhenDecided) {
    if (isFullAndCalm(run) && run.watchers.heat.isFilledThrough()) return { kind: 'filled and quiet' };
    if (run.watchers.heat.stiffFor() >= STIFF_TIME) return { kind: 'quiet, not filled' };
  }
  if (run.time < run.motion.duration) return null;
  const spilling = run.flow.spilled - run.spilledBefore > SPILLING_SHARE * run.volumeAtStart;
  run.spilledBefore = run.flow.spilled;
  run.quietFor = !spilling && typicalSpeed(run) < QUIET_SPEED ? run.quietFor + run.lookEvery : 0;
  if (run.quietFor >= QUIET_TIME)
    return { kind: run.watchers.fill.share() >= FULL_ENOUGH ? 'filled and quiet' : 'quiet, not filled' };
  return run.time >= limit ? { kind: 'out of time' } : null;
}

/** Root mean square speed of all metal [m/s]. */
function typicalSpeed(run: Run): number {
  const { flow, mesh } = run;
  let sum = 0;
  let mass = 0;
  for (let j = 1; j < mesh.cells; j++) {
    const metal = flow.area[j]! * mesh.facePath[j]!;
    sum += metal * flow.speed[j]! ** 2;
    mass += metal;
  }
  return mass > 0 ? Math.sqrt(sum / mass) : 0;
}
