import { asStages } from './asStages';
import { checkKnots, MOST_KNOTS } from './checkKnots';
import { knotMotion } from './knotMotion';
import { nearestTilt } from './nearestTilt';
import { LEAST_TURN, SHORT_STRETCH, usableLimits } from './range';
import type { Knot, KnotTilt, MachineLimits, PlainTilt } from './tilt';

/** Knots that were typed at one time are put this far apart [s]. */
const APART = 0.02;
/** Stretches are lengthened again and again, because a cubic leans on its neighbours; then all of them alike. */
const ROUNDS = 40;

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
  const paced = pacedStretches(angles, stretchesOf(knots), limits);
  const nearest: KnotTilt = {
    kind: 'drawn',
    start: angles[0]!,
    limits: tilt.limits,
    origin: tilt.origin,
    knots: knotsAfter(angles, paced),
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

/** Times from knot to knot [s]. */
function stretchesOf(knots: readonly Knot[]): number[] {
  let before = 0;
  return knots.map(({ time }) => {
    const stretch = Math.max(time - before, APART);
    before += stretch;
    return stretch;
  });
}

function pacedStretches(
  angles: readonly number[],
  wanted: readonly number[],
  { slowest, quickest }: MachineLimits,
): number[] {
  let stretches = wanted.map((time, i) => {
    const turn = angles[i]! - angles[i + 1]!;
    const longest = turn < LEAST_TURN ? Number.POSITIVE_INFINITY : Math.max(turn / slowest, SHORT_STRETCH);
    return Math.min(Math.max(time, turn / quickest), longest);
  });
  for (let round = 0; round < ROUNDS; round++) {
    const excess = quickestRates(angles, stretches).map((rate) => rate / quickest);
    if (Math.max(...excess) <= 1) return stretches;
    stretches = stretches.map((time, i) => time * Math.max(1, excess[i]!));
  }
  const left = Math.max(1, ...quickestRates(angles, stretches).map((rate) => rate / quickest));
  return stretches.map((time) => time * left);
}

/** The quickest rate within each stretch [rad/s]: of a cubic's parabola of rates, at its ends or at its vertex. */
function quickestRates(angles: readonly number[], stretches: readonly number[]): number[] {
  const { rateAt } = knotMotion({ start: angles[0]!, knots: knotsAfter(angles, stretches) });
  let from = 0;
  return stretches.map((time, i) => {
    const [a, b] = [Math.abs(rateAt(from)), i === stretches.length - 1 ? 0 : Math.abs(rateAt(from + time))];
    from += time;
    const mean = (angles[i]! - angles[i + 1]!) / time;
    const bend = a + b - 2 * mean;
    const vertex = bend === 0 ? -1 : (2 * a + b - 3 * mean) / (3 * bend);
    const atVertex = vertex > 0 && vertex < 1 ? a - 3 * bend * vertex * vertex : 0;
    return Math.max(a, b, atVertex);
  });
}

function knotsAfter(angles: readonly number[], stretches: readonly number[]): Knot[] {
  let time = 0;
  return stretches.map((stretch, i) => {
    time += stretch;
    return { time, inclination: angles[i + 1]! };
  });
}
