import { knotMotion } from './knotMotion';
import { LEAST_TURN, SHORT_STRETCH } from './range';
import type { Knot, MachineLimits } from './tilt';

/** Knots that were typed at one time are put this far apart [s]. */
const APART = 0.02;
/** Stretches are lengthened again and again, because a cubic leans on its neighbours; then all of them alike. */
const ROUNDS = 40;

/**
 * Knots at these inclinations [rad], the start first, moved in time until the curve through them keeps within the rates: a
 * stretch that would turn quicker than the quickest is lengthened until it does not, one that would creep is shortened to
 * the slowest, and all after it moves by as much. With a slowest of 0 none is shortened.
 *
 * @param angles falling, one more than there are knots
 */
export function pacedKnots(
  angles: readonly number[],
  knots: readonly Knot[],
  rates: Pick<MachineLimits, 'slowest' | 'quickest'>,
): Knot[] {
  return knotsAfter(angles, pacedStretches(angles, stretchesOf(knots), rates));
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
  { slowest, quickest }: Pick<MachineLimits, 'slowest' | 'quickest'>,
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
