import { cosine, sine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Fold } from '$src/core/pour/record';
import { isClear, STRICTER } from './clear';
import { trackEpisodes } from './episode';
import { foldSize } from './foldSize';
import { cellSpeed, type Sample } from './sample';
import type { Watcher } from './watcher';

/** Speed and depth are read this far upstream of the lip [m]; thinner metal than this is film [m]. */
const UPSTREAM = 5e-3;
const FILM = 1e-3;
/** The stream cannot turn tighter than this radius [m]. */
const LEAST_RADIUS = 3e-3;
/** Bends of the floor below this are no lip [rad]. */
const LEAST_BEND = 0.09;
/** A fall that lands at this share of critical, and over, is marked, heavy. Ours. */
const MARKED = 0.8;
const HEAVY = 1.2;
const LOOKS = 10;
const SEEN = 8;
const ONE_JET = 0.5;

/** A place where the floor turns away downwards, seen along the flow to the die end. */
interface Lip {
  readonly face: number;
  /** Angle the floor turns through [rad]; a vertical step down counts as a right angle. */
  readonly bend: number;
  /** Mesh cell 5 mm upstream, and the one just past the lip. */
  readonly upstream: number;
  readonly past: number;
}

/**
 * A stream that leaves the floor at a convex lip: it cannot follow a bend when the acceleration needed to turn,
 * u² bend / max(depth, 3 mm), is more than gravity presses it on with, g cos(floor's angle in the room).
 * Curved-flow force balance, derived; the reading 5 mm upstream and the 3 mm radius are ours.
 */
export function watchLips(mesh: Mesh, criticalSpeed: number): Watcher {
  const lips = findLips(mesh);
  const jets = (seen: number) => trackEpisodes({ looks: LOOKS, seen, within: 0, gap: ONE_JET });
  const trackers = lips.map(() => jets(SEEN));
  const strict = lips.map(() => jets(LOOKS));
  const falls = lips.map(() => 0);

  function look(sample: Sample): void {
    lips.forEach((lip, k) => {
      const jet = jetAt(lip, sample);
      if (jet) falls[k] = Math.max(falls[k]!, jet.fall);
      const place = sample.mesh.facePlace[lip.face]!;
      const seen = jet
        ? [{ time: sample.time, place, inclination: sample.inclination, strength: jet.landing }]
        : [];
      trackers[k]!.note(sample.time, seen);
      strict[k]!.note(sample.time, jet?.isStrict ? seen : []);
    });
  }

  function folds(): Fold[] {
    return trackers.flatMap((tracker, k) => {
      const episode = tracker.episodes()[0];
      if (!episode) return [];
      const { first, strongest } = episode;
      return [
        {
          kind: 'lip jet',
          size: foldSize(strongest.strength / criticalSpeed, MARKED, HEAVY),
          isClear: isClear(episode, strict[k]!.episodes()),
          time: first.time,
          place: first.place,
          inclination: first.inclination,
          severity: { value: strongest.strength, quantity: 'landing speed', unit: 'm/s' },
          details: { fall_m: falls[k]!, strongest_time_s: strongest.time, bend_rad: lips[k]!.bend },
          cause:
            'The stream is too quick to follow the floor, leaves it at the lip and plunges into what lies below.',
          cure: 'Round the lip, lower the fall below it, or pass it slowly while the die runs uphill.',
        } satisfies Fold,
      ];
    });
  }

  return { name: 'lips', look, folds };
}

function findLips(mesh: Mesh): Lip[] {
  const lips: Lip[] = [];
  for (let j = 1; j < mesh.cells; j++) {
    const drop = mesh.floorRight[j - 1]! - mesh.floorLeft[j]!;
    const before = Math.asin(mesh.floorSin[j - 1]!);
    const after = drop > 1e-6 ? -Math.PI / 2 : Math.asin(mesh.floorSin[j]!);
    const climbs = drop < -1e-6;
    if (climbs || before - after < LEAST_BEND) continue;
    lips.push({
      face: j,
      bend: before - after,
      upstream: cellAt(mesh, mesh.facePlace[j]! - UPSTREAM),
      past: j,
    });
  }
  return lips;
}

function cellAt(mesh: Mesh, place: number): number {
  let i = 0;
  while (i < mesh.cells - 1 && mesh.facePlace[i + 1]! < place) i++;
  return i;
}

interface Jet {
  /** Down to what it lands on [m], and the speed there [m/s]. */
  readonly fall: number;
  readonly landing: number;
  /** Whether it also leaves the floor with limits a fifth stricter. */
  readonly isStrict: boolean;
}

function jetAt(lip: Lip, { flow, mesh, inclination }: Sample): Jet | null {
  const i = lip.upstream;
  const depth = flow.depth[i]! * mesh.floorCos[i]!;
  const u = cellSpeed(flow, i);
  if (depth < FILM || u <= 0 || flow.full[i] || flow.full[lip.past]) return null;
  const floorAngle = inclination + Math.asin(mesh.floorSin[i]!);
  const needed = (u * u * lip.bend) / Math.max(depth, LEAST_RADIUS);
  const pressing = GRAVITY * Math.max(0, cosine(floorAngle));
  if (needed <= pressing) return null;
  const lipLevel =
    mesh.x[lip.face]! * sine(inclination) + mesh.floorRight[lip.face - 1]! * cosine(inclination);
  const fall = Math.max(0, lipLevel - landingLevel(lip, flow.level, mesh, inclination));
  const isStrict = needed > STRICTER * pressing && depth >= STRICTER * FILM;
  return { fall, landing: Math.sqrt(u * u + 2 * GRAVITY * fall), isStrict };
}

/** Surface or floor that the stream comes down on: two fall heights past a step, or a centimetre past a bend. */
function landingLevel(lip: Lip, level: Float64Array, mesh: Mesh, inclination: number): number {
  const i = cellAt(mesh, mesh.facePlace[lip.face]! + 2 * UPSTREAM);
  const floor =
    mesh.x[i]! * sine(inclination) + ((mesh.floorLeft[i]! + mesh.floorRight[i]!) / 2) * cosine(inclination);
  return Math.max(floor, level[i]!);
}
