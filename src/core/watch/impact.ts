import { GRAVITY } from '$src/core/gravity';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Fold } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

const TOUCH = 1e-4;
const LAST_STRETCH = 20e-3;
/** A front this near the wall may strike it before the next look [m]. */
const NEAR = 40e-3;
/** Slower than this share of critical the touch is quiet: run-up stays well under what the skin holds. The step is ours. */
const QUIET_SHARE = 0.5;
/** A front that stands this share of the opening has no room to climb the wall and fall back. Ours. */
const FULL_HEIGHT = 0.9;

/**
 * The front striking the end wall: speed = momentum over mass of its last 20 mm, at the last look before it arrives. At
 * the look that finds it there, the metal by the wall may already have been stopped by it.
 */
export function watchImpact(mesh: Mesh, criticalSpeed: number): Watcher {
  const last = mesh.cells - 1;
  const opening = mesh.roofRight[last]! - mesh.floorRight[last]!;

  let fold: Fold | null = null;
  let arrived: boolean | null = null;
  let before: Stretch | null = null;

  function look(sample: Sample): void {
    if (arrived === null) arrived = sample.front >= sample.dieLength - TOUCH;
    if (arrived) return;
    if (sample.front < sample.dieLength - TOUCH) {
      before = sample.front > sample.dieLength - NEAR ? stretchBehind(sample, sample.front) : null;
      return;
    }
    arrived = true;
    const { speed, depth, fullness } = before ?? stretchBehind(sample, sample.dieLength);
    if (speed < QUIET_SHARE * criticalSpeed || fullness >= FULL_HEIGHT) return;
    const runUp = (speed * speed) / (2 * GRAVITY);
    fold = {
      kind: 'end impact',
      size: foldSize(speed / criticalSpeed, 0.8, 1.2),
      isClear: speed >= STRICTER * QUIET_SHARE * criticalSpeed && fullness < FULL_HEIGHT / STRICTER,
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

interface Stretch {
  /** Momentum over mass [m/s]. */
  readonly speed: number;
  /** Mean [m]. */
  readonly depth: number;
  /** Depth over opening. */
  readonly fullness: number;
}

/** The metal between a front and 20 mm behind it. */
function stretchBehind({ profile }: Sample, front: number): Stretch {
  const { spacing } = profile;
  let mass = 0;
  let momentum = 0;
  let room = 0;
  let places = 0;
  const from = Math.max(0, Math.floor((front - LAST_STRETCH) / spacing) + 1);
  const to = Math.min(profile.places - 1, Math.floor(front / spacing));
  for (let k = from; k <= to; k++) {
    mass += profile.depth[k]!;
    momentum += profile.depth[k]! * profile.speed[k]!;
    room += profile.opening[k]!;
    places++;
  }
  if (places === 0 || mass === 0) return { speed: 0, depth: 0, fullness: 0 };
  return { speed: momentum / mass, depth: mass / places, fullness: mass / room };
}
