import { asStages } from './asStages';
import { checkKnots, MOST_KNOTS } from './checkKnots';
import { nearestTilt } from './nearestTilt';
import { pacedKnots } from './paceKnots';
import { LEAST_TURN, usableLimits } from './range';
import type { KnotTilt, MachineLimits, PlainTilt } from './tilt';

/**
 * The nearest tilt the machine can do to one that is drawn or measured, as a drawn one. The rule, a projection knot by
 * knot: inclinations are brought inside highest start and lowest end, and a knot above the one before it down to that
 * one; a knot that is not later than the one before it is put 0.02 s after it; a stretch between knots that would turn
 * quicker than the machine's quickest is lengthened until it does not, one that would creep shortened to the slowest, and
 * all after it moves in time by as much. Where slowest and quickest lie so close that no smooth curve fits between
 * them, it is told in stages instead. null when numbers or knots are missing, or the limits leave no room.
 */
export function nearestKnots(tilt: KnotTilt): PlainTilt | null {
  const { start, knots } = tilt;
  const isWhole = [start, ...knots.flatMap(({ time, inclination }) => [time, inclination])].every(
    Number.isFinite,
  );
  if (!isWhole || knots.length < 1 || knots.length > MOST_KNOTS) return null;
  const limits = usableLimits(tilt.limits);
  if (limits.highestStart - limits.lowestEnd < LEAST_TURN || limits.slowest > limits.quickest) return null;
  const angles = fallingAngles([start, ...knots.map(({ inclination }) => inclination)], limits);
  const nearest: KnotTilt = {
    kind: 'drawn',
    start: angles[0]!,
    limits: tilt.limits,
    origin: tilt.origin,
    knots: pacedKnots(angles, knots, limits),
  };
  return checkKnots(nearest).length === 0 ? nearest : nearestTilt(asStages(nearest));
}

function fallingAngles(wanted: readonly number[], { highestStart, lowestEnd }: MachineLimits): number[] {
  let before = highestStart;
  const falling = wanted.map((angle) => {
    before = Math.min(Math.max(angle, lowestEnd), before);
    return before;
  });
  const last = falling.length - 1;
  if (falling[0]! - falling[last]! >= LEAST_TURN) return falling;
  // It would not turn at all: the least turn, from a little higher where there is no room below.
  const end = Math.max(falling[0]! - LEAST_TURN, lowestEnd);
  return falling.map((angle, index) => (index === last ? end : Math.max(angle, end + LEAST_TURN)));
}
