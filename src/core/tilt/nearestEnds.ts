import { HOME_RANGE, SHARE_RANGE } from './checkFrontLed';
import { checkMachineTilt } from './machine/checkMachine';
import { LEAST_TURN, usableLimits } from './range';
import type { FrontLedTilt, MachineLimits, MachineTilt } from './tilt';

interface Ends {
  readonly start: number;
  readonly end: number;
}

/**
 * Start and end inside the machine's limits, the higher one first, apart by the least turn at least; null when either
 * is no number.
 */
function nearestEnds({ start, end }: Ends, limits: MachineLimits): Ends | null {
  if (!Number.isFinite(start) || !Number.isFinite(end)) return null;
  const { highestStart, lowestEnd } = usableLimits(limits);
  const inside = (angle: number, least: number, most: number) => Math.min(Math.max(angle, least), most);
  const high = inside(Math.max(start, end), lowestEnd + LEAST_TURN, highestStart);
  return { start: high, end: inside(Math.min(start, end), lowestEnd, high - LEAST_TURN) };
}

/** The machine with its stops moved inside the limits; null when something else about it is wrong too. */
export function nearestRelease(tilt: MachineTilt): MachineTilt | null {
  const ends = nearestEnds(tilt, tilt.limits);
  const moved = ends && { ...tilt, ...ends };
  return moved && checkMachineTilt(moved).length === 0 ? moved : null;
}

/** Rates need none: the tilt is worked out within the machine's. */
export function nearestFrontLed(tilt: FrontLedTilt): FrontLedTilt | null {
  const ends = nearestEnds(tilt, tilt.limits);
  if (!ends || !Number.isFinite(tilt.share)) return null;
  const { homeWithin } = tilt;
  if (homeWithin !== null && !Number.isFinite(homeWithin)) return null;
  return {
    ...tilt,
    ...ends,
    share: Math.min(Math.max(tilt.share, SHARE_RANGE.least), SHARE_RANGE.most),
    homeWithin:
      homeWithin === null ? null : Math.min(Math.max(homeWithin, HOME_RANGE.least), HOME_RANGE.most),
  };
}
