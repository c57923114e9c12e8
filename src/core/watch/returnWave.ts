import type { Fold } from '$src/core/pour/record';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

/** States are read this far either side of the jump [m]. */
const REACH = 5e-3;
const DEPTH_RATIO = 1.25;
const LEAST_DEPTH = 2e-3;
const LEAST_FROUDE = 1.3;
const LEAST_JUMP = 0.2;
/** A bore must be seen in 8 of 10 looks (20 ms). */
const LOOKS = 10;
const SEEN = 8;
const TOUCH = 1e-4;

/**
 * The return wave: a breaking bore that runs back towards the mouth after the front has met the end wall.
 * A jump counts when the depths 5 mm either side differ by more than a quarter, both deeper than 2 mm, faster
 * against the shallow side than 1.3 of its wave speed, closing by more than 0.2 m/s, in 8 of 10 looks. What is
 * reported is the velocity jump; the bore's Froude number divides by a thin film and does not settle.
 */
export function watchReturnWave(criticalSpeed: number, gravity: number): Watcher {
  const seen: boolean[] = [];
  let arrived = false;
  let start: { time: number; place: number; inclination: number } | null = null;
  let confirmed = false;
  let worst = { jump: 0, time: 0, place: 0, inclination: 0 };

  function look(sample: Sample): void {
    if (!arrived) arrived = sample.front >= sample.dieLength - TOUCH && sample.time > 0;
    if (!arrived) return;
    const jump = strongestReturning(sample, gravity);
    seen.push(jump !== null);
    if (seen.length > LOOKS) seen.shift();
    if (jump === null) {
      if (!confirmed && !seen.includes(true)) start = null;
      return;
    }
    start ??= { time: sample.time, place: jump.place, inclination: sample.inclination };
    if (seen.length === LOOKS && seen.filter(Boolean).length >= SEEN) confirmed = true;
    if (jump.size > worst.jump)
      worst = { jump: jump.size, time: sample.time, place: jump.place, inclination: sample.inclination };
  }

  function folds(): Fold[] {
    if (!confirmed || start === null) return [];
    return [
      {
        kind: 'return wave',
        size: foldSize(worst.jump / criticalSpeed, 0.8, 1.2),
        time: start.time,
        place: start.place,
        inclination: start.inclination,
        severity: { value: worst.jump, quantity: 'meeting speed', unit: 'm/s' },
        details: { strongest_time_s: worst.time, strongest_place_m: worst.place },
        cause:
          'Metal thrown back from the end wall runs over the incoming stream and traps the two skins between them.',
        cure: 'Have the front arrive slowly and full height: uphill start, slower tilt until the end is reached.',
      },
    ];
  }

  return { name: 'return wave', look, folds };
}

function strongestReturning(sample: Sample, gravity: number): { size: number; place: number } | null {
  const { profile } = sample;
  const normalGravity = gravity * Math.max(Math.cos(sample.inclination), 0.05);
  const reach = Math.round(REACH / profile.spacing);
  let best: { size: number; place: number } | null = null;
  for (let k = reach; k + reach < profile.places; k++) {
    const shallow = profile.depth[k - reach]!;
    const deep = profile.depth[k + reach]!;
    if (shallow < LEAST_DEPTH || deep < DEPTH_RATIO * shallow) continue;
    const incoming = profile.speed[k - reach]!;
    const behind = profile.speed[k + reach]!;
    const size = incoming - behind;
    if (size < LEAST_JUMP) continue;
    const wave = (deep * behind - shallow * incoming) / (deep - shallow);
    if (wave >= 0 || Math.abs(incoming - wave) < LEAST_FROUDE * Math.sqrt(normalGravity * shallow)) continue;
    if (best === null || size > best.size) best = { size, place: k * profile.spacing };
  }
  return best;
}
