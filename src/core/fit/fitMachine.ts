import { knotMotion } from '$src/core/tilt/knotMotion';
import type { Machine } from '$src/core/tilt/machine/machine';
import type { Knot, KnotTilt } from '$src/core/tilt/tilt';
import { leastSquares } from './leastSquares';
import { quickTilt } from './quickTilt';
import { type Unknown, type UnknownId, unknownsOf } from './unknowns';

export interface FitTask {
  readonly machine: Machine;
  /** A tilt of that machine without metal, as it was measured. */
  readonly measured: Pick<KnotTilt, 'start' | 'knots'>;
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
  const inclinations = (body: Machine, letGo: number) => {
    const release = { start: motion.start, end: motion.end, machine: body };
    const run = quickTilt(release, motion.duration + LATEST);
    return times.map((time) => run.inclinationAt(time + letGo));
  };
  const found = leastSquares((values) => inclinations(withValues(values), values.at(-1)! - LATEST), targets, [
    ...sought.map((one) => ({ start: one.read(machine), least: one.least, most: one.most })),
    LET_GO,
  ]);
  const fitted = withValues(found.values);
  const letGo = found.values.at(-1)! - LATEST;
  return {
    machine: fitted,
    values: sought.map((one, k) => fittedValue(one, machine, found.values[k]!, found.deviations[k]!)),
    letGo,
    residualBefore: distance(inclinations(machine, LET_GO.start - LATEST), targets),
    residual: found.residual,
    curve: inclinations(fitted, letGo).map((inclination, i) => ({ time: times[i]!, inclination })),
  };
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
