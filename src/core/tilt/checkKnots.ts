import type { Issue } from '$src/core/issue';
import { degrees } from './degrees';
import { knotMotion } from './knotMotion';
import { INCLINATION_RANGE, LEAST_TURN, RATE_RANGE, ROUNDING, SHORT_STRETCH, usableLimits } from './range';
import type { KnotTilt } from './tilt';

/** More knots than a book should carry. */
export const MOST_KNOTS = 400;

/** What is wrong with a drawn or measured tilt; a measured one may turn back a little, because the machine did. */
export function checkKnots(tilt: KnotTilt): Issue[] {
  const broken = shapeIssues(tilt);
  if (broken.length > 0) return broken;
  const out = tilt.kind === 'measured' ? reachIssues(tilt) : rangeIssues(tilt);
  return [...out, ...turnIssues(tilt), ...rateIssues(tilt), ...creepIssues(tilt)];
}

/** Said once for all readings: none of them can be typed, but the zero they are counted from can. */
function reachIssues({ start, knots }: KnotTilt): Issue[] {
  const { highest, lowest } = INCLINATION_RANGE;
  const all = [start, ...knots.map(({ inclination }) => inclination)];
  const beyond = all.map((angle) => Math.max(angle - highest, lowest - angle));
  const count = beyond.filter((by) => by > ROUNDING).length;
  if (count === 0) return [];
  const furthest = all[beyond.indexOf(Math.max(...beyond))]!;
  return [
    {
      path: beyond[0]! > ROUNDING ? 'start' : 'knots',
      message: `${count} of ${all.length} smoothed readings ${count === 1 ? 'is' : 'are'} out of reach, the furthest at ${degrees(furthest)}.`,
      remedy: `They have to lie within ${degrees(highest)} and ${degrees(lowest)}. ${zeroText(all)}`,
    },
  ];
}

/** What is missing: where the readings are counted from, if there is a zero with which all of them lie within. */
function zeroText(all: readonly number[]): string {
  const { highest, lowest } = INCLINATION_RANGE;
  const start = all[0]!;
  const [most, least] = [Math.max(...all), Math.min(...all)];
  if (most - least > highest - lowest)
    return `They span ${degrees(most - least)}, more than that: no zero mends it. Look for a wrong reading in the file.`;
  const [from, to] = [lowest + start - least, highest + start - most];
  return `Where the instrument counts from another zero, type what it shows when its face is level, or where the die starts: all readings move with it. With a start of ${degrees(from)} to ${degrees(to)} all lie within.`;
}

function shapeIssues({ start, knots }: KnotTilt): Issue[] {
  const remedy = 'Give each knot a later time than the one before it.';
  if (!Number.isFinite(start))
    return [{ path: 'start', message: 'This is not a number.', remedy: 'Type a number.' }];
  if (knots.length < 1 || knots.length > MOST_KNOTS)
    return [
      { path: 'knots', message: `The tilt has ${knots.length} knots.`, remedy: `Give 1 to ${MOST_KNOTS}.` },
    ];
  return knots.flatMap(({ time, inclination }, index) => {
    const path = `knots.${index}.time`;
    if (!Number.isFinite(time + inclination))
      return [{ path, message: 'This is not a number.', remedy: 'Type a number.' }];
    const before = index === 0 ? 0 : knots[index - 1]!.time;
    return time > before
      ? []
      : [{ path, message: `Knot ${index + 2} is not later than the one before.`, remedy }];
  });
}

function rangeIssues({ start, knots, limits }: KnotTilt): Issue[] {
  const { highestStart, lowestEnd } = usableLimits(limits);
  const remedy = `Keep within ${degrees(highestStart)} and ${degrees(lowestEnd)}.`;
  const all = [start, ...knots.map((knot) => knot.inclination)];
  return all.flatMap((inclination, index) => {
    const path = index === 0 ? 'start' : `knots.${index - 1}.inclination`;
    if (inclination <= highestStart + ROUNDING && inclination >= lowestEnd - ROUNDING)
      return index > 0 && inclination > all[index - 1]!
        ? [
            {
              path,
              message: `Knot ${index + 1} turns back up.`,
              remedy: 'Draw it at or below the one before.',
            },
          ]
        : [];
    return [{ path, message: `Knot ${index + 1} at ${degrees(inclination)} is out of reach.`, remedy }];
  });
}

function turnIssues({ start, knots }: KnotTilt): Issue[] {
  if (Math.abs(start - knots.at(-1)!.inclination) >= LEAST_TURN - ROUNDING) return [];
  return [{ path: 'knots', message: 'The tilt does not turn.', remedy: 'End below the start.' }];
}

/** A drawn stretch slower than the machine's slowest; a pause is none, and a measured tilt was turned as it is. */
function creepIssues({ kind, start, knots, limits }: KnotTilt): Issue[] {
  if (kind === 'measured') return [];
  const { slowest } = usableLimits(limits);
  return knots.flatMap(({ time, inclination }, index) => {
    const before = index === 0 ? { time: 0, inclination: start } : knots[index - 1]!;
    const turn = before.inclination - inclination;
    const took = time - before.time;
    const creeps = turn >= LEAST_TURN && took > SHORT_STRETCH + ROUNDING && turn / took < slowest - ROUNDING;
    if (!creeps) return [];
    const message = `Knot ${index + 2} is reached at ${degrees(turn / took)} a second; the slowest is ${degrees(slowest)} a second.`;
    const remedy = 'Bring it nearer in time, or hold the inclination for a pause.';
    return [{ path: `knots.${index}.time`, message, remedy }];
  });
}

const LOOKS = 400;

function rateIssues(tilt: KnotTilt): Issue[] {
  const quickest = tilt.kind === 'measured' ? RATE_RANGE.quickest : usableLimits(tilt.limits).quickest;
  const motion = knotMotion(tilt);
  let most = 0;
  for (let i = 0; i < LOOKS; i++)
    most = Math.max(most, Math.abs(motion.rateAt((motion.duration * i) / LOOKS)));
  if (most <= quickest + ROUNDING) return [];
  const message = `The tilt reaches ${degrees(most)} a second; ${degrees(quickest)} a second is the most.`;
  const remedy =
    tilt.kind === 'measured'
      ? 'Smooth the readings over a longer time, or look for a wrong one in the file.'
      : 'Move the knots further apart in time.';
  return [{ path: 'knots', message, remedy }];
}
