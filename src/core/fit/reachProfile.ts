import type { Machine } from '$src/core/tilt/machine/machine';
import type { Knot, Motion } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { leastSquares, type Sought } from './leastSquares';
import { quickTilt } from './quickTilt';
import {
  type Changeable,
  inSteps,
  isBeyondShop,
  openingOf,
  openingRange,
  type ReachedSetting,
  settingsOf,
  WEIGHT,
  withMasses,
  withOpening,
} from './settings';

export interface ReachTask {
  readonly machine: Machine;
  /** The tilt that is wanted, sampled from its start at time 0 to its end, falling. */
  readonly wanted: readonly Knot[];
  readonly changeable: Changeable;
  /** From when on it does not matter how the body turns: the die is full [s]; absent = all of the tilt counts. */
  readonly until?: number;
}

/** A stretch of time in which the machine strays from what is wanted by more than `NEAR` [s]. */
export interface Missed {
  readonly from: number;
  readonly to: number;
}

export interface Reach {
  readonly machine: Machine;
  readonly settings: readonly ReachedSetting[];
  /** Root mean square and greatest difference of inclination [rad], and when the greatest is [s]. */
  readonly residual: number;
  readonly worst: number;
  readonly worstTime: number;
  readonly missed: readonly Missed[];
  readonly curve: readonly Knot[];
  /** Root mean square difference of the machine as it stands [rad]. */
  readonly residualBefore: number;
  /** Whether it comes closer than as it stands by more than is lost in the noise, with weights that a shop has. */
  readonly isNearer: boolean;
}

/** Closer on the whole by less than this is no gain [rad]. Ours. */
const LEAST_GAIN = fromDegrees(0.1);
/** Closer than this and a person sees no difference [rad]. Ours. */
export const NEAR = fromDegrees(3);

const INSTANTS = 120;
/** Looked at for this much longer than the wanted tilt, so that a machine that lags behind is told from one in time. */
const BEYOND = 1.15;
/** Openings the search is begun from, as shares of all turns or of the Kv as it is: one start may end in a hollow. */
const STARTS = [0.04, 0.12, 0.35, 0.8] as const;
const KV_STARTS = [0.1, 0.4, 1, 3] as const;
/** A kilogram more or less has to bring the tilt closer by this much all along, or the weight stays as it is [rad]. Ours. */
const WORTH = fromDegrees(0.025);

/**
 * The settings with which the machine, let go without metal, comes closest to a wanted tilt while that counts. Weights
 * stay as they are where the valve alone brings it within `NEAR` of what is wanted, and are changed no more than they are worth.
 */
export function reachProfile({ machine, wanted, changeable, until }: ReachTask): Reach {
  const release = { start: wanted[0]!.inclination, end: wanted.at(-1)!.inclination };
  const duration = wanted.at(-1)!.time;
  const counted = Math.min(until ?? Number.POSITIVE_INFINITY, BEYOND * duration);
  const times = instantsTo(counted);
  const targets = times.map((time) => inclinationAt(wanted, time));
  const turned = (body: Machine, to: number) => quickTilt({ ...release, machine: body }, to);
  const inclinations = (body: Machine) => inclinationsOf(turned(body, counted), times);
  const strayed = (body: Machine) => strayOf(knotsAt(times, inclinations(body)), targets);

  let reached = machine;
  const without = { ...changeable, weights: [] };
  if (changeable.valve) reached = nearest(without);
  if (changeable.weights.length > 0 && strayed(reached).worst > NEAR) reached = nearest(changeable);
  if (strayed(machine).residual <= strayed(reached).residual) reached = machine;
  const all = instantsTo(BEYOND * duration);
  const settings = settingsOf(machine, reached, changeable);
  const [stray, before] = [strayed(reached), strayed(machine)];
  return {
    machine: reached,
    settings,
    ...stray,
    residualBefore: before.residual,
    isNearer: stray.residual < before.residual - LEAST_GAIN && !settings.some(isBeyondShop),
    curve: knotsAt(all, inclinationsOf(turned(reached, BEYOND * duration), all)),
  };

  function nearest({ valve, weights }: Changeable): Machine {
    const masses = weights.map((i) => machine.weights[i]!.mass);
    const soughtMasses = masses.map((mass): Sought => ({ start: Math.max(mass, 1), ...WEIGHT }));
    const withValues = (values: readonly number[]): Machine => {
      const opening = valve ? values[0]! : openingOf(machine);
      return withMasses(withOpening(machine, opening), weights, valve ? values.slice(1) : values);
    };
    const changes = (body: Machine): number[] =>
      weights.map((i, k) => WORTH * Math.sqrt(INSTANTS) * (body.weights[i]!.mass - masses[k]!));
    const model = (values: readonly number[]): number[] => {
      const body = withValues(values);
      return [...inclinations(body), ...changes(body)];
    };
    const aims = [...targets, ...weights.map(() => 0)];
    const best = (valve ? soughtOpenings(machine) : [null])
      .map((opening) => leastSquares(model, aims, opening ? [opening, ...soughtMasses] : soughtMasses))
      .reduce((a, b) => (b.residual < a.residual ? b : a));
    return inSteps(withValues(best.values), machine, { valve, weights });
  }
}

const instantsTo = (time: number): number[] =>
  Array.from({ length: INSTANTS }, (_, i) => (time * (i + 1)) / INSTANTS);

const inclinationsOf = (motion: Motion, times: readonly number[]): number[] =>
  times.map((time) => motion.inclinationAt(time));

const knotsAt = (times: readonly number[], inclinations: readonly number[]): Knot[] =>
  times.map((time, i) => ({ time, inclination: inclinations[i]! }));

function inclinationAt(wanted: readonly Knot[], time: number): number {
  const after = wanted.findIndex((knot) => knot.time >= time);
  if (after < 0) return wanted.at(-1)!.inclination;
  if (after === 0) return wanted[0]!.inclination;
  const [a, b] = [wanted[after - 1]!, wanted[after]!];
  return a.inclination + ((b.inclination - a.inclination) * (time - a.time)) / (b.time - a.time);
}

function soughtOpenings(machine: Machine): Sought[] {
  const { valve } = machine;
  const starts =
    valve.by === 'Kv'
      ? KV_STARTS.map((share) => valve.kv * share)
      : STARTS.map((share) => valve.turns * share);
  return starts.map((start) => ({ start, ...openingRange(machine) }));
}

function strayOf(
  curve: readonly Knot[],
  targets: readonly number[],
): Pick<Reach, 'residual' | 'worst' | 'worstTime' | 'missed'> {
  const strays = curve.map(({ inclination }, i) => Math.abs(inclination - targets[i]!));
  const worst = Math.max(...strays);
  const squares = strays.reduce((sum, one) => sum + one * one, 0);
  const missed: { from: number; to: number }[] = [];
  strays.forEach((stray, i) => {
    if (stray <= NEAR) return;
    const time = curve[i]!.time;
    if (i > 0 && strays[i - 1]! > NEAR) missed.at(-1)!.to = time;
    else missed.push({ from: i > 0 ? curve[i - 1]!.time : 0, to: time });
  });
  return {
    residual: Math.sqrt(squares / strays.length),
    worst,
    worstTime: curve[strays.indexOf(worst)]!.time,
    missed,
  };
}
