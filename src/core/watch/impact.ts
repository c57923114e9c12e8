import { GRAVITY } from '$src/core/gravity';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Fold } from '$src/core/pour/record';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

const TOUCH = 1e-4;
const LAST_STRETCH = 20e-3;
/** Slower than this share of critical the touch is quiet: run-up stays well under what the skin holds. The step is ours. */
const QUIET_SHARE = 0.5;

/** The front striking the end wall: speed = momentum over mass of the last 20 mm when it arrives. */
export function watchImpact(mesh: Mesh, criticalSpeed: number): Watcher {
  const last = mesh.cells - 1;
  const opening = mesh.roofRight[last]! - mesh.floorRight[last]!;

  let fold: Fold | null = null;
  let arrived: boolean | null = null;

  function look(sample: Sample): void {
    if (arrived === null) arrived = sample.front >= sample.dieLength - TOUCH;
    if (arrived || sample.front < sample.dieLength - TOUCH) return;
    arrived = true;
    const { speed, depth } = lastStretch(sample);
    if (speed < QUIET_SHARE * criticalSpeed) return;
    const runUp = (speed * speed) / (2 * GRAVITY);
    fold = {
      kind: 'end impact',
      size: foldSize(speed / criticalSpeed, 0.8, 1.2),
      time: sample.time,
      place: sample.dieLength,
      inclination: sample.inclination,
      severity: { value: speed, quantity: 'speed at the end wall', unit: 'm/s' },
      details: {
        depth_m: depth,
        run_up_m: runUp,
        roof_strike: depth + runUp > opening ? 1 : 0,
        froude: depth > 0 ? speed / Math.sqrt(GRAVITY * depth) : 0,
      },
      cause: 'The metal strikes the end of the die, climbs it and falls back on itself.',
      cure: 'Have the front arrive while the die still runs uphill, or slow the tilt before it arrives.',
    };
  }

  return { name: 'end impact', look, folds: () => (fold ? [fold] : []) };
}

function lastStretch(sample: Sample): { speed: number; depth: number } {
  const { profile, dieLength } = sample;
  let mass = 0;
  let momentum = 0;
  let places = 0;
  for (let k = profile.places - 1; k >= 0 && k * profile.spacing > dieLength - LAST_STRETCH - 1e-9; k--) {
    mass += profile.depth[k]!;
    momentum += profile.depth[k]! * profile.speed[k]!;
    places++;
  }
  return { speed: mass > 0 ? momentum / mass : 0, depth: places > 0 ? mass / places : 0 };
}
