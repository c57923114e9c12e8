import type { Machine, Weight } from '$src/core/tilt/machine/machine';
import type { Knot, Motion } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { type Found, leastSquares, type Sought } from './leastSquares';
import { quickTilt } from './quickTilt';

export interface ReachTask {
  readonly machine: Machine;
  /** The tilt that is wanted, sampled from its start at time 0 to its end, falling. */
  readonly wanted: readonly Knot[];
  /** From when on it does not matter how the body turns: the die is full [s]; absent = all of the tilt counts. */
  readonly until?: number;
}

/** A setting of the machine as it is and as it comes closest. */
export interface ReachedSetting {
  readonly setting: 'valve' | 'weight';
  /** Number of the weight, from 0. */
  readonly index: number;
  readonly before: number;
  readonly value: number;
  readonly isAtEdge: boolean;
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
}

/** Closer than this and a person sees no difference [rad]. Ours. */
export const NEAR = fromDegrees(3);

const INSTANTS = 120;
/** Looked at for this much longer than the wanted tilt, so that a machine that lags behind is told from one in time. */
const BEYOND = 1.15;
/** Openings the search is begun from, as shares of all turns or of the Kv as it is: one start may end in a hollow. */
const STARTS = [0.04, 0.12, 0.35, 0.8] as const;
const KV_STARTS = [0.1, 0.4, 1, 3] as const;
/** A weight can be taken off all but this, or made this heavy [kg]. */
const WEIGHT = { least: 0.01, most: 200 } as const;
const EDGE = 1e-3;
/** Least share of all turns looked at: next to shut. */
const SHUT = 1e-3;

/** Valve opening and weights with which the machine, let go without metal, comes closest to a wanted tilt while that counts. */
export function reachProfile({ machine, wanted, until }: ReachTask): Reach {
  const start = wanted[0]!.inclination;
  const end = wanted.at(-1)!.inclination;
  const duration = wanted.at(-1)!.time;
  const counted = Math.min(until ?? Number.POSITIVE_INFINITY, BEYOND * duration);
  const times = instantsTo(counted);
  const targets = times.map((time) => inclinationAt(wanted, time));
  const motionOf = (body: Machine, to: number) => quickTilt({ start, end, machine: body }, to);
  const inclinations = (body: Machine) => inclinationsOf(motionOf(body, counted), times);
  const openings = soughtOpenings(machine);
  const weights = machine.weights.map(({ mass }): Sought => ({ start: Math.max(mass, 1), ...WEIGHT }));
  const best = openings
    .map((opening) =>
      leastSquares((values) => inclinations(withSettings(machine, values)), targets, [opening, ...weights]),
    )
    .reduce((a, b) => (b.residual < a.residual ? b : a));
  const reached = withSettings(machine, best.values);
  const curve = knotsAt(times, inclinations(reached));
  const all = instantsTo(BEYOND * duration);
  return {
    machine: reached,
    settings: settingsOf(machine, best, [openings[0]!, ...weights]),
    ...strayOf(curve, targets),
    curve: knotsAt(all, inclinationsOf(motionOf(reached, BEYOND * duration), all)),
  };
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

function soughtOpenings({ valve }: Machine): Sought[] {
  if (valve.by === 'Kv')
    return KV_STARTS.map((share) => ({ start: valve.kv * share, least: 1e-4, most: 20 }));
  return STARTS.map((share) => ({
    start: valve.turns * share,
    least: valve.turns * SHUT,
    most: valve.turns,
  }));
}

function withSettings(machine: Machine, [opening, ...masses]: readonly number[]): Machine {
  const { valve } = machine;
  return {
    ...machine,
    valve: valve.by === 'Kv' ? { by: 'Kv', kv: opening! } : { ...valve, open: opening! },
    weights: machine.weights.map((weight, i): Weight => ({ ...weight, mass: masses[i]! })),
  };
}

function settingsOf(machine: Machine, { values }: Found, sought: readonly Sought[]): ReachedSetting[] {
  const { valve, weights } = machine;
  const before = [valve.by === 'Kv' ? valve.kv : valve.open, ...weights.map(({ mass }) => mass)];
  return values.map((value, k) => ({
    setting: k === 0 ? 'valve' : 'weight',
    index: Math.max(0, k - 1),
    before: before[k]!,
    value,
    isAtEdge: value <= sought[k]!.least * (1 + EDGE) || value >= sought[k]!.most * (1 - EDGE),
  }));
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
