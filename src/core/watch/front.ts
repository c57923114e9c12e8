import type { Fold, FrontSpeeds } from '$src/core/pour/record';
import { foldSize } from './foldSize';
import { PLACE_STEP, type Sample } from './sample';
import type { Watcher } from './watcher';

/** Window over which the front speed is taken [m]; a fifth of the die when that is shorter. */
const WINDOW = 20e-3;
const MICRO = 1e-9;

/** What the front watcher knows when the pour is over. */
export interface FrontWatch extends Watcher {
  frontSpeeds(): FrontSpeeds;
  /** When the front passed the mouth [s]; null = never; 0 = it stood in the die at the start. */
  firstFlow(): { time: number; inclination: number } | null;
  startedInDie(): boolean;
  /** When the front reached the die end [s]. */
  arrival(): { time: number; inclination: number } | null;
}

interface Crossing {
  readonly time: number;
  readonly inclination: number;
  readonly depth: number;
}

/**
 * Front place and speed. Speed at a place is the window divided by the time between the front's first crossings
 * of its two ends, every 5 mm: a definition that does not move with the mesh.
 */
export function watchFront(
  dieLength: number,
  criticalSpeed: number,
  surfaceTension: number,
  density: number,
  gravity: number,
): FrontWatch {
  const window = Math.min(WINDOW, dieLength / 5);
  const places = Math.floor(dieLength / PLACE_STEP + MICRO) + 1;
  const windowSteps = Math.max(1, Math.round(window / PLACE_STEP));
  const crossings: (Crossing | null)[] = Array.from({ length: places }, () => null);
  let next = 0;
  let before: { time: number; front: number; inclination: number } | null = null;
  let startedInDie = false;
  let arrival: { time: number; inclination: number } | null = null;

  function look(sample: Sample): void {
    if (before === null) startedInDie = sample.front > 0;
    const from = before ?? { time: sample.time, front: sample.front, inclination: sample.inclination };
    while (next < places && sample.front > next * PLACE_STEP + MICRO) {
      crossings[next] = before === null ? null : crossingAt(next * PLACE_STEP, from, sample);
      next++;
    }
    if (arrival === null && before !== null && sample.front >= dieLength - 1e-4)
      arrival = { time: sample.time, inclination: sample.inclination };
    before = { time: sample.time, front: sample.front, inclination: sample.inclination };
  }

  function frontSpeeds(): FrontSpeeds {
    const rows: { place: number; speed: number; time: number; inclination: number; depth: number }[] = [];
    for (let k = windowSteps; k < places; k++) {
      const start = crossings[k - windowSteps];
      const end = crossings[k];
      if (!start || !end || end.time <= start.time) continue;
      const length = windowSteps * PLACE_STEP;
      rows.push({
        place: (k - windowSteps / 2) * PLACE_STEP,
        speed: length / (end.time - start.time),
        time: end.time,
        inclination: end.inclination,
        depth: end.depth,
      });
    }
    return {
      place: Float64Array.from(rows, (row) => row.place),
      speed: Float64Array.from(rows, (row) => row.speed),
      time: Float64Array.from(rows, (row) => row.time),
      inclination: Float64Array.from(rows, (row) => row.inclination),
      depth: Float64Array.from(rows, (row) => row.depth),
      window: windowSteps * PLACE_STEP,
    };
  }

  return {
    name: 'front',
    look,
    frontSpeeds,
    firstFlow: () => (startedInDie ? null : (crossings[0] ?? null)),
    startedInDie: () => startedInDie,
    arrival: () => arrival,
    folds: () => foldsOverCritical(frontSpeeds(), criticalSpeed, surfaceTension, density, gravity),
  };
}

function crossingAt(
  place: number,
  before: { time: number; front: number; inclination: number },
  sample: Sample,
): Crossing {
  const moved = sample.front - before.front;
  const share = moved > 0 ? Math.min(1, Math.max(0, (place - before.front) / moved)) : 1;
  return {
    time: before.time + share * (sample.time - before.time),
    inclination: before.inclination + share * (sample.inclination - before.inclination),
    depth: depthBehind(sample, place),
  };
}

/** Mean depth of the 20 mm behind a place [m]. */
function depthBehind(sample: Sample, place: number): number {
  const { profile } = sample;
  const last = Math.min(profile.places - 1, Math.max(0, Math.floor(place / profile.spacing)));
  const first = Math.max(0, last - Math.round(WINDOW / profile.spacing));
  let sum = 0;
  for (let k = first; k <= last; k++) sum += profile.depth[k]!;
  return sum / (last - first + 1);
}

/** One fold for each unbroken stretch of the die that the front ran above critical speed. */
function foldsOverCritical(
  speeds: FrontSpeeds,
  critical: number,
  surfaceTension: number,
  density: number,
  gravity: number,
): Fold[] {
  const folds: Fold[] = [];
  let k = 0;
  while (k < speeds.speed.length) {
    if (speeds.speed[k]! <= critical) {
      k++;
      continue;
    }
    const first = k;
    let peak = k;
    while (k < speeds.speed.length && speeds.speed[k]! > critical) {
      if (speeds.speed[k]! > speeds.speed[peak]!) peak = k;
      k++;
    }
    folds.push(overCritical(speeds, first, k - 1, peak, critical, surfaceTension, density, gravity));
  }
  return folds;
}

function overCritical(
  speeds: FrontSpeeds,
  first: number,
  last: number,
  peak: number,
  critical: number,
  surfaceTension: number,
  density: number,
  gravity: number,
): Fold {
  const speed = speeds.speed[peak]!;
  const depth = speeds.depth[peak]!;
  return {
    kind: 'front over critical',
    size: foldSize(speed / critical, 1.1, 1.4),
    time: speeds.time[peak]!,
    place: speeds.place[peak]!,
    inclination: speeds.inclination[peak]!,
    severity: { value: speed, quantity: 'front speed', unit: 'm/s' },
    details: {
      critical_m_per_s: critical,
      from_m: speeds.place[first]! - speeds.window / 2,
      to_m: speeds.place[last]! + speeds.window / 2,
      depth_m: depth,
      froude: depth > 0 ? speed / Math.sqrt(gravity * depth) : 0,
      weber: (density * speed * speed * depth) / surfaceTension,
      length_scale_m: depth,
    },
    cause:
      'The front runs faster than its skin can stretch, so the surface breaks and folds its own film in.',
    cure: 'Let the metal enter while the die still runs uphill: higher start angle, fuller or shorter basin, slower tilt through level.',
  };
}
