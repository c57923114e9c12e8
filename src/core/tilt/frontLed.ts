import { MOST_KNOTS } from './checkKnots';
import { pacedKnots } from './paceKnots';
import { usableLimits } from './range';
import type { Knot, KnotTilt, MachineLimits } from './tilt';

/** The level fill against inclination, falling [rad]: front [m] and filled share, 0 to 1, as `levelPath` gives them. */
export interface FrontPath {
  readonly inclination: ArrayLike<number>;
  readonly front: ArrayLike<number>;
  readonly share: ArrayLike<number>;
}

export interface FrontLedWish {
  /** Front speed to hold [m/s]. */
  readonly speed: number;
  /** How hard the rate may change [rad/s²]. */
  readonly acceleration: number;
  readonly limits: MachineLimits;
}

/** Share of the critical speed that is held unless another is wished. */
export const FRONT_LED_SHARE = 0.6;
export const FRONT_LED_ACCELERATION = 1.5;
/** Inclination steps the rates are worked out at. */
const STEPS = 480;
/** Rates are asked for by what the front does over this stretch about an inclination, in steps. */
const ABOUT = 3;
const KNOTS = 80;
/** Two rates in a row that are both 0 would never end: this share of one step's gain stands for rest. */
const REST_SHARE = 1 / 1024;

/**
 * The rate at each inclination that holds the level-fill front at a speed: Ω = v/|dx/dφ|, within the machine's rates
 * and with bounded acceleration, from rest to rest. A front that jumps gets the slowest rate just there. Once the front
 * is home the filling keeps the pace: no more of the die fills in a second than the front would have run through, or
 * the metal behind it would close the die in a rush and shut gas in.
 *
 * @param mostAt highest rate at each inclination [rad/s]; the correction lowers it where the run overshot
 */
export function frontLedTilt(
  path: FrontPath,
  { speed, acceleration, limits }: FrontLedWish,
  mostAt: (inclination: number) => number = () => Number.POSITIVE_INFINITY,
): KnotTilt {
  const start = path.inclination[0]!;
  const end = path.inclination[path.inclination.length - 1]!;
  const step = (start - end) / STEPS;
  const { slowest, quickest } = usableLimits(limits);
  const along = (values: ArrayLike<number>) =>
    Array.from({ length: STEPS + 1 }, (_, i) => valueAt(path.inclination, values, start - step * i));
  const places = along(path.front);
  const length = Math.max(0, ...places);
  const filled = along(path.share).map((share) => share * length);
  const wished = places.map((_, i) => {
    const from = Math.max(0, i - ABOUT);
    const to = Math.min(STEPS, i + ABOUT);
    const gone = Math.max(Math.abs(places[to]! - places[from]!), filled[to]! - filled[from]!);
    const moved = gone / ((to - from) * step);
    const most = Math.min(quickest, mostAt(start - step * i));
    const rate = Math.min(speed / Math.max(moved, 1e-9), most);
    return Math.max(rate, slowest);
  });
  const times = timesOf(boundedRates(wished, step, acceleration), step, acceleration);
  const knots = thinned(times, start, step);
  const angles = [start, ...knots.map(({ inclination }) => inclination)];
  // The curve through the knots turns a little quicker between them than what they are taken from.
  return {
    kind: 'drawn',
    start,
    limits,
    knots: pacedKnots(angles, knots, { slowest: 0, quickest }),
    origin: '',
  };
}

function valueAt(inclination: ArrayLike<number>, values: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = inclination.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (inclination[middle]! >= at) low = middle;
    else high = middle;
  }
  const span = inclination[low]! - inclination[high]!;
  const share = span > 0 ? Math.min(Math.max((inclination[low]! - at) / span, 0), 1) : 0;
  return values[low]! + share * (values[high]! - values[low]!);
}

/** Ω² may change by no more than 2 a per radian; from rest, and down to rest at the end. */
function boundedRates(wished: readonly number[], step: number, acceleration: number): number[] {
  const rates = [...wished];
  rates[0] = 0;
  rates[rates.length - 1] = 0;
  const bound = (i: number, from: number) => {
    rates[i] = Math.min(rates[i]!, Math.sqrt(rates[from]! ** 2 + 2 * acceleration * step));
  };
  for (let i = 1; i < rates.length; i++) bound(i, i - 1);
  for (let i = rates.length - 2; i >= 0; i--) bound(i, i + 1);
  return rates;
}

/** Time at each step: the rate changes evenly over a step. */
function timesOf(rates: readonly number[], step: number, acceleration: number): number[] {
  const least = Math.sqrt(2 * acceleration * step) * REST_SHARE;
  const times = [0];
  for (let i = 1; i < rates.length; i++)
    times.push(times[i - 1]! + (2 * step) / Math.max(rates[i - 1]! + rates[i]!, least));
  return times;
}

/** Knots at even times and at even turns, so that neither a slow nor a quick stretch is told too coarsely. */
function thinned(times: readonly number[], start: number, step: number): Knot[] {
  const last = times.length - 1;
  const kept = new Set<number>();
  for (let k = 1; k <= KNOTS; k++) kept.add(Math.round((last * k) / KNOTS));
  let i = 0;
  for (let k = 1; k < KNOTS; k++) {
    while (times[i]! < (times[last]! * k) / KNOTS) i++;
    if (i > 0) kept.add(i);
  }
  const knots = [...kept]
    .sort((a, b) => a - b)
    .map((k) => ({ time: times[k]!, inclination: start - step * k }));
  return knots.slice(-MOST_KNOTS);
}
