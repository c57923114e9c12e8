import { cosine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';
import type { Fold, FoldKind } from '$src/core/pour/record';
import { isClear, STRICTER } from './clear';
import { type Episode, type Sighting, type Tracker, trackEpisodes } from './episode';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

/** States are read this far either side of the jump [m]. */
const REACH = 5e-3;
/** Rise from the shallower side over its depth, and the least depth of either [m]. */
const DEPTH_RISE = 0.25;
const LEAST_DEPTH = 2e-3;
/** From this Froude number a bore breaks; down to the lower it rolls on as smooth waves. */
const BREAKING = 1.3;
const UNDULAR = 1.2;
/** Closing speed that counts [m/s]. */
const LEAST_JUMP = 0.25;
/** A return wave is seen in 8 of 10 looks (20 ms), the others in 16 of 20; sightings within 1 s are one train of waves. */
const LOOKS = 10;
const SEEN = 8;
const ONE_TRAIN = 1;
/** No bore runs faster [m/s], nor further between two looks [m]. */
const QUICKEST = 10;
const WITHIN = 20e-3;
/** Places this near a steeper jump are its flank: one of the two readings lies in the rise itself [m]. */
const FLANK = 2 * REACH;
const TOUCH = 1e-4;
const MICRO = 1e-9;

type BoreKind = Extract<FoldKind, 'breaking bore' | 'undular bore' | 'return wave'>;

const WORDS: Record<BoreKind, { cause: string; cure: string }> = {
  'return wave': {
    cause:
      'Metal thrown back from the end wall runs over the incoming stream and traps the two skins between them.',
    cure: 'Have the front arrive slowly and full height: uphill start, slower tilt until the end is reached.',
  },
  'breaking bore': {
    cause: 'A steep wave breaks over slower, shallower metal and turns its skin under.',
    cure: 'Tilt more slowly while the wave runs, and change the rate smoothly.',
  },
  'undular bore': {
    cause:
      'A smooth wave runs over shallower metal; its skin is stretched and drawn together but hardly turned under.',
    cure: 'A smoother start of the tilt takes it away; on its own it seldom matters.',
  },
};

/**
 * Bores: jumps in depth that travel. A jump counts when the depths 5 mm either side differ by more than a
 * quarter, both deeper than 2 mm, and it meets the shallow side faster than 1.2 (smooth) or 1.3 (breaking) of that
 * side's wave speed, closing by more than 0.25 m/s, in 16 of 20 looks; a return wave in 8 of 10. Limits of the Froude number: Favre 1935
 * (strength 0.281, F 1.21, as given by Kalisch et al. 2020, Water Waves) and Chanson 2010 (first crests break at
 * 1.3 to 1.4). What is reported is the velocity jump: the Froude number divides by a thin film and never settles.
 */
export function watchBores(criticalSpeed: number): Watcher {
  const trackers = boreTrackers(SEEN);
  const strict = boreTrackers(LOOKS);
  const kinds = Object.keys(trackers) as BoreKind[];
  let arrival = Number.POSITIVE_INFINITY;

  function look(sample: Sample): void {
    if (sample.time > 0 && sample.front >= sample.dieLength - TOUCH) arrival = Math.min(arrival, sample.time);
    const jumps = jumpsIn(sample, placeReached(sample, arrival));
    for (const kind of kinds) {
      const seen = jumps.filter((jump) => jump.kind === kind);
      trackers[kind].note(sample.time, seen);
      strict[kind].note(
        sample.time,
        seen.filter((jump) => jump.isStrict),
      );
    }
  }

  function folds(): Fold[] {
    return kinds.flatMap((kind) =>
      trackers[kind].episodes().map((episode) => ({
        ...boreFold(kind, episode, criticalSpeed),
        isClear: isClear(episode, strict[kind].episodes()),
      })),
    );
  }

  return { name: 'bores', look, folds };
}

/** How far back from the end wall a wave can have come that began when the front arrived [m from the mouth]. */
const placeReached = ({ time, dieLength }: Sample, arrival: number): number =>
  time >= arrival ? dieLength - WITHIN - QUICKEST * (time - arrival) : Number.POSITIVE_INFINITY;

/** A return wave is looked at for 20 ms, the others for 40. */
function boreTrackers(seen: number): Record<BoreKind, Tracker> {
  const one = { looks: LOOKS, seen, within: WITHIN, gap: ONE_TRAIN };
  const longer = { ...one, looks: 2 * LOOKS, seen: 2 * seen };
  return {
    'return wave': trackEpisodes(one),
    'breaking bore': trackEpisodes(longer),
    'undular bore': trackEpisodes(longer),
  };
}

function boreFold(
  kind: BoreKind,
  { first, strongest }: Episode,
  criticalSpeed: number,
): Omit<Fold, 'isClear'> {
  return {
    kind,
    size: kind === 'undular bore' ? 'slight' : foldSize(strongest.strength / criticalSpeed, 0.8, 1.2),
    time: first.time,
    place: first.place,
    inclination: first.inclination,
    severity: { value: strongest.strength, quantity: 'velocity jump', unit: 'm/s' },
    details: { strongest_time_s: strongest.time, strongest_place_m: strongest.place },
    ...WORDS[kind],
  };
}

interface Jump extends Sighting {
  readonly kind: BoreKind;
  /** Whether it also counts with limits a fifth stricter. */
  readonly isStrict: boolean;
}

/**
 * Jumps of one look, each read where it is steepest. Beside it, where one of the two readings falls into the rise
 * itself, the jump relation gives a wave of another speed and kind that is not there.
 */
function jumpsIn(sample: Sample, reached: number): Jump[] {
  const jumps = fallsIn(sample, reached);
  if (jumps.length < 2) return jumps;
  return jumps.filter(({ place, strength }) =>
    jumps.every((other) => other.strength <= strength || Math.abs(other.place - place) > FLANK + MICRO),
  );
}

/** Every place where the states either side make a jump. */
function fallsIn(sample: Sample, reached: number): Jump[] {
  const { profile, time, inclination } = sample;
  const { speed } = profile;
  const normalGravity = GRAVITY * Math.max(cosine(inclination), 0.05);
  const reach = Math.round(REACH / profile.spacing);
  const jumps: Jump[] = [];
  for (let k = reach; k + reach < profile.places; k++) {
    const strength = speed[k - reach]! - speed[k + reach]!;
    if (strength < LEAST_JUMP) continue;
    const returns = k * profile.spacing >= reached;
    const kind = jumpAt(sample, k, reach, normalGravity, returns, 1);
    if (kind === null) continue;
    const isStrict =
      strength >= STRICTER * LEAST_JUMP &&
      jumpAt(sample, k, reach, normalGravity, returns, STRICTER) === kind;
    jumps.push({ kind, time, place: k * profile.spacing, inclination, strength, isStrict });
  }
  return jumps;
}

/** What kind of bore stands at place k, where metal closes fast enough, if any, with limits so many times stricter. */
function jumpAt(
  { profile }: Sample,
  k: number,
  reach: number,
  normalGravity: number,
  returns: boolean,
  stricter: number,
): BoreKind | null {
  const left = profile.depth[k - reach]!;
  const right = profile.depth[k + reach]!;
  const shallow = Math.min(left, right);
  const deep = Math.max(left, right);
  if (shallow < LEAST_DEPTH * stricter || deep - shallow < DEPTH_RISE * stricter * shallow) return null;
  const uLeft = profile.speed[k - reach]!;
  const uRight = profile.speed[k + reach]!;
  const wave = (right * uRight - left * uLeft) / (right - left);
  const ahead = left < right ? uLeft : uRight;
  const froude = Math.abs(ahead - wave) / Math.sqrt(normalGravity * shallow);
  if (froude > BREAKING * stricter)
    return returns && left < right && wave < 0 ? 'return wave' : 'breaking bore';
  return froude > UNDULAR * stricter && froude <= BREAKING ? 'undular bore' : null;
}
