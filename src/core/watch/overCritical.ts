import type { Liquid } from '$src/core/pour/plan';
import type { Fold, FrontSpeeds } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import { joined, stretchesWhere } from './stretches';

/** Stretches below critical shorter than this do not part two folds [m]: the front had no room to mend. */
const PART_LENGTH = 20e-3;
/** Ratios to critical from which a fold is marked, heavy. Ours. */
const MARKED = 1.1;
const HEAVY = 1.4;

type Skin = Pick<Liquid, 'criticalSpeed' | 'surfaceTension' | 'density'>;

/** One fold for each stretch of the die that the front ran above critical speed. */
export function foldsOverCritical(speeds: FrontSpeeds, liquid: Skin): Fold[] {
  const over = stretchesWhere(speeds.speed.length, (k) => speeds.speed[k]! > liquid.criticalSpeed);
  return joined(over, (end, next) => speeds.place[next]! - speeds.place[end]! <= PART_LENGTH).map(
    ([first, last]) => overCritical(speeds, first, last, liquid),
  );
}

function overCritical(speeds: FrontSpeeds, first: number, last: number, liquid: Skin): Fold {
  let peak = first;
  for (let k = first; k <= last; k++) if (speeds.speed[k]! > speeds.speed[peak]!) peak = k;
  const speed = speeds.speed[peak]!;
  const depth = speeds.depth[peak]!;
  return {
    kind: 'front over critical',
    size: foldSize(speed / liquid.criticalSpeed, MARKED, HEAVY),
    isClear: speed > STRICTER * liquid.criticalSpeed,
    time: speeds.time[peak]!,
    place: speeds.place[peak]!,
    inclination: speeds.inclination[peak]!,
    severity: { value: speed, quantity: 'front speed', unit: 'm/s' },
    details: {
      critical_m_per_s: liquid.criticalSpeed,
      from_m: speeds.place[first]! - speeds.window / 2,
      to_m: speeds.place[last]! + speeds.window / 2,
      depth_m: depth,
      fullness: speeds.fullness[peak]!,
      froude: speeds.froude[peak]!,
      weber: (liquid.density * speed * speed * depth) / liquid.surfaceTension,
      length_scale_m: depth,
    },
    cause:
      'The front runs faster than its skin can stretch, so the surface breaks and folds its own film in.',
    cure: 'Let the metal enter while the die still runs uphill: a fuller basin, which a higher start makes room for, a shorter one for the same weight, or a lower sill. Turn more slowly through level.',
  };
}
