import type { Fold, FrontSpeeds } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import { joined, stretchesWhere } from './stretches';

/** A front is a tongue when the 20 mm behind it are less than half full and shoot (Froude number over 1) ... */
const LEAST_FULLNESS = 0.5;
const SHOOTING = 1;
/** ... over more than this length of die [m]. */
const LEAST_LENGTH = 20e-3;
/** ... where stretches that do not, shorter than this, part nothing: the front had no room to mend [m]. */
const PART_LENGTH = 20e-3;
/** Shares of the die run as a tongue from which the fold is marked, heavy. Ours. */
const MARKED = 0.25;
const HEAVY = 0.5;

/**
 * Metal running ahead as a thin shooting layer under empty space, where a full-height wall was wanted. Froude
 * number over 1 = shooting flow: textbook open-channel hydraulics; a half-full section: our definition.
 */
export function tonguesOf(speeds: FrontSpeeds, dieLength: number): Fold[] {
  const long = stretchesOf(speeds, 1);
  const longest = long.sort((a, b) => lengthOf(speeds, ...b) - lengthOf(speeds, ...a))[0];
  if (!longest) return [];
  const total = long.reduce((sum, run) => sum + lengthOf(speeds, ...run), 0);
  const isClear = stretchesOf(speeds, STRICTER).length > 0;
  return [{ ...tongue(speeds, longest[0], longest[1], total, dieLength), isClear }];
}

/** Stretches run as a tongue, with limits so many times stricter. */
function stretchesOf(speeds: FrontSpeeds, stricter: number): (readonly [first: number, last: number])[] {
  const runs = stretchesWhere(
    speeds.speed.length,
    (k) => speeds.froude[k]! > SHOOTING * stricter && speeds.fullness[k]! < LEAST_FULLNESS / stricter,
  );
  return joined(runs, (end, next) => lengthOf(speeds, end, next) <= PART_LENGTH).filter(
    ([first, last]) => lengthOf(speeds, first, last) > LEAST_LENGTH * stricter,
  );
}

function lengthOf(speeds: FrontSpeeds, first: number, last: number): number {
  return speeds.place[last]! - speeds.place[first]!;
}

function tongue(
  speeds: FrontSpeeds,
  first: number,
  last: number,
  total: number,
  dieLength: number,
): Omit<Fold, 'isClear'> {
  let thinnest = first;
  for (let k = first; k <= last; k++) if (speeds.fullness[k]! < speeds.fullness[thinnest]!) thinnest = k;
  return {
    kind: 'tongue',
    size: foldSize(total / dieLength, MARKED, HEAVY),
    time: speeds.time[first]!,
    place: speeds.place[first]!,
    inclination: speeds.inclination[first]!,
    severity: { value: total, quantity: 'length run as a tongue', unit: 'm' },
    details: {
      fullness_least: speeds.fullness[thinnest]!,
      froude: speeds.froude[thinnest]!,
      depth_m: speeds.depth[thinnest]!,
      to_m: speeds.place[last]!,
    },
    cause:
      'The metal shoots ahead as a thin layer and leaves the section above it empty; what follows rolls over its skin.',
    cure: 'Fill the basin to the brink, from a higher start if there is room, lower the sill, and pass level slowly so that the section stands full behind the front.',
  };
}
