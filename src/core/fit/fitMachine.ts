import { knotMotion } from '$src/core/tilt/knotMotion';
import type { Machine } from '$src/core/tilt/machine/machine';
import type { Knot, KnotTilt, KnownReadings, Motion } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { type Doubts, leastSquares, type Sought, within } from './leastSquares';
import { quickTilt } from './quickTilt';
import { type Unknown, type UnknownId, unknownsOf } from './unknowns';

export interface FitTask {
  readonly machine: Machine;
  /** A tilt of that machine without metal, as it was measured. */
  readonly measured: Pick<KnotTilt, 'start' | 'knots' | 'readings'>;
  readonly unknowns: readonly UnknownId[];
}

export interface FittedValue {
  readonly id: UnknownId;
  readonly name: string;
  readonly before: number;
  readonly value: number;
  /** Standard deviation from the scatter about the fit; Infinity when this tilt does not decide it. */
  readonly deviation: number;
  /** It lies on the edge of the range it was looked for in. */
  readonly isAtEdge: boolean;
}

export interface Fit {
  readonly machine: Machine;
  readonly values: readonly FittedValue[];
  /** The body was let go this long before the first reading of the tilt [s]; below 0 after it. */
  readonly letGo: number;
  /** Root mean square between readings and machine [rad], as given and as fitted. */
  readonly residualBefore: number;
  readonly residual: number;
  /** The machine strays from the readings by more than they scatter: it is not the one that was measured. */
  readonly isOff: boolean;
  /** The machine as fitted, at the times of the readings. */
  readonly curve: readonly Knot[];
}

/**
 * A body begins to creep before a reading shows it, and noise may look like a beginning: it was let go this long
 * before the first reading or after it [s]. Sought as a positive number, counted from the earliest.
 */
const LATEST = 2;
const LET_GO = { start: LATEST + 0.1, least: 1e-3, most: 2 * LATEST } as const;
/** As near to the edge of its range as this share, and it lies on it. */
const EDGE = 1e-3;

/**
 * Finds the unknowns of a machine for which its dry tilt comes closest to a measured one (least squares of the
 * inclination at its knots). The instant it was let go is found with them, since readings show a turn late.
 */
export function fitMachine({ machine, measured, unknowns }: FitTask): Fit {
  const motion = knotMotion(measured);
  // The knots themselves: points between them would count as readings that nobody made, and make the fit look surer.
  // The last is where the treatment let the tilt end, not a reading.
  const knots = measured.knots.slice(0, -1);
  const times = knots.map(({ time }) => time);
  const targets = knots.map(({ inclination }) => inclination);
  const sought = unknownsOf(machine).filter(({ id }) => unknowns.includes(id));
  const withValues = (values: readonly number[]) =>
    sought.reduce((changed, unknown, k) => unknown.write(changed, values[k]!), machine);
  const { readings } = measured;
  const over = readings?.smoothedOver ?? 0;
  const inclinations = (body: Machine, letGo: number, off: Ends = { start: 0, end: 0 }) => {
    const release = { start: motion.start + off.start, end: motion.end + off.end, machine: body };
    const run = quickTilt(release, motion.duration + LATEST);
    return times.map((time) => smoothedAt(run, time + letGo, over));
  };
  const model = (values: readonly number[], off?: Ends) =>
    inclinations(withValues(values), values.at(-1)! - LATEST, off);
  const doubts: Doubts = {
    likeness: over > 0 ? (i, j) => likenessAfter(Math.abs(times[i]! - times[j]!) / over) : null,
    offBy: (values, residual) => {
      const { start, end } = endDoubts(readings, residual);
      const own = model(values);
      const changes = (off: Ends) => model(values, off).map((one, i) => one - own[i]!);
      return [changes({ start, end: 0 }), changes({ start: 0, end })];
    },
  };
  const found = startsOf(sought, machine, (values) => distance(model(values), targets))
    .map((start) => leastSquares(model, targets, start, doubts))
    .reduce((best, one) => (one.residual < best.residual ? one : best));
  const fitted = withValues(found.values);
  const letGo = found.values.at(-1)! - LATEST;
  return {
    machine: fitted,
    values: sought.map((one, k) => fittedValue(one, machine, found.values[k]!, found.deviations[k]!)),
    letGo,
    residualBefore: distance(inclinations(machine, LET_GO.start - LATEST), targets),
    residual: found.residual,
    isOff: found.residual > Math.max(OFF.least, OFF.times * (readings?.scatter ?? 0)),
    curve: inclinations(fitted, letGo).map((inclination, i) => ({ time: times[i]!, inclination })),
  };
}

/** A fit is off from here on [rad], or from so many times the scatter of one reading. Ours. */
const OFF = { least: fromDegrees(0.3), times: 1.5 } as const;

/** Shares of what is given that the first unknown and the second are tried at, the rest as they are. */
const TRIED = [
  [0.08, 0.3, 1, 3, 8],
  [0.2, 1, 3],
] as const;
/** The search is begun from so many of them: from one it may end in a hollow. */
const BEGUN = 3;

/** The nearest of a coarse grid of starts, the machine as given among them. */
function startsOf(
  sought: readonly Unknown[],
  machine: Machine,
  distanceOf: (values: readonly number[]) => number,
): (readonly Sought[])[] {
  const grid = sought.reduce<readonly (readonly Sought[])[]>(
    (starts, { read, least, most }, k) => {
      const shares = TRIED[k] ?? [1];
      return starts.flatMap((start) =>
        shares.map((share) => [...start, { start: read(machine) * share, least, most }]),
      );
    },
    [[]],
  );
  return grid
    .map((start) => [...start, LET_GO])
    .map((start) => ({ start, distance: distanceOf(start.map((one) => within(one.start, one))) }))
    .toSorted((one, other) => one.distance - other.distance)
    .slice(0, BEGUN)
    .map(({ start }) => start);
}

interface Ends {
  readonly start: number;
  readonly end: number;
}

/** How well the inclinations at rest are known; without the readings, no better than the machine fits [rad]. */
function endDoubts(readings: KnownReadings | undefined, residual: number): Ends {
  if (!readings) return { start: residual, end: residual };
  const { scatter, before, after } = readings;
  return { start: scatter / Math.sqrt(before), end: scatter / Math.sqrt(after) };
}

/**
 * How much alike the errors of two smoothed readings are that lie this far apart, as a share of the time they are
 * smoothed over: the parabola's weights, w(u) = (9 − 15 u²)/8 on −1 to 1, laid over each other.
 */
function likenessAfter(apart: number): number {
  if (apart >= 1) return 0;
  const shift = 2 * apart;
  const weight = (u: number) => (Math.abs(u) > 1 ? 0 : 9 - 15 * u * u);
  let [sum, own] = [0, 0];
  for (let i = 0; i <= OVERLAYS; i++) {
    const u = -1 + (2 * i) / OVERLAYS;
    sum += weight(u) * weight(u + shift);
    own += weight(u) ** 2;
  }
  return sum / own;
}

const OVERLAYS = 40;

/** As many readings as this are taken for those that a smoothed one was made of, on either side of it. */
const BESIDE = 5;

/**
 * The motion as a parabola through its surroundings has it in the middle: the readings were smoothed so, and a model
 * that was not would be set against a stop and a start that are rounded. Weights of Savitzky and Golay (1964), quadratic.
 */
function smoothedAt({ inclinationAt }: Motion, time: number, over: number): number {
  if (!(over > 0)) return inclinationAt(time);
  let sum = 0;
  let weights = 0;
  for (let i = -BESIDE; i <= BESIDE; i++) {
    const weight = 3 * BESIDE * (BESIDE + 1) - 1 - 5 * i * i;
    sum += weight * inclinationAt(time + (i * over) / (2 * BESIDE));
    weights += weight;
  }
  return sum / weights;
}

function fittedValue(
  { id, name, read, least, most }: Unknown,
  machine: Machine,
  value: number,
  deviation: number,
): FittedValue {
  const isAtEdge = value <= least * (1 + EDGE) || value >= most * (1 - EDGE);
  return { id, name, before: read(machine), value, deviation, isAtEdge };
}

function distance(values: readonly number[], targets: readonly number[]): number {
  const squares = values.reduce((sum, value, i) => sum + (value - targets[i]!) ** 2, 0);
  return Math.sqrt(squares / targets.length);
}
