import type { Issue } from '$src/core/issue';
import { fromDegrees } from '$src/core/units';
import type { Knot, KnownReadings } from '../tilt';
import type { Reading } from './readRows';
import { restBeyond } from './restBeyond';

/** What is done to readings before they are a tilt. */
export interface Treatment {
  /** The instrument counts the other way. */
  readonly reversed: boolean;
  /** The face it lies on, against the die axis [rad]: 0 along it, ±π/2 square to it, π upside down. */
  readonly face: number;
  /** Angle the instrument shows with its face level [rad], in its own count. */
  readonly zero: number;
  /** The instrument shows late by this [s]. */
  readonly lag: number;
  /** Readings within half of this on either side are smoothed by a parabola [s]; 0 for none. */
  readonly smoothing: number;
}

export const PLAIN_TREATMENT: Treatment = { reversed: false, face: 0, zero: 0, lag: 0, smoothing: 0.2 };

export interface Treated {
  readonly start: number;
  readonly knots: readonly Knot[];
  /** Root mean square of readings about the smoothed line [rad]. */
  readonly noise: number;
  readonly readings: KnownReadings;
  readonly notes: readonly Issue[];
}

/** The body has begun to turn, or is at rest again, when it is this far from where it stood [rad]. */
const MOVED = fromDegrees(0.5);
/** Or further, by so many times the scatter of the readings: noise that looks like a beginning would come too early. */
const NOISY = 3;
const KNOTS = 60;
const TURN = 2 * Math.PI;
/** A gap this many usual steps long is named. */
const GAP = 5;

/** Readings to a tilt: corrected, smoothed, cut to the stretch that turns, and thinned to knots at even times. */
export function treatReadings(readings: readonly Reading[], treatment: Treatment): Treated {
  const corrected = correctedOf(readings, treatment);
  const half = treatment.smoothing / 2;
  const smooth = corrected.map(({ time }) => smoothedAt(corrected, time, half)!);
  const squares = corrected.reduce((sum, { angle }, i) => sum + (angle - smooth[i]!) ** 2, 0);
  const noise = Math.sqrt(squares / readings.length);
  const moved = Math.max(MOVED, NOISY * noise);
  const [from, to] = turningStretch(smooth, standsAt(corrected, treatment.smoothing), moved);
  // Half of each rest, away from the turn: the body creeps before it shows and after it seems to stand.
  const before = Math.ceil((from + 1) / 2);
  const after = Math.ceil((corrected.length - to) / 2);
  const start = meanAngle(corrected.slice(0, before));
  const end = meanAngle(corrected.slice(-after));
  const line = corrected.map(({ time }, i) => ({ time, angle: smooth[i]! }));
  const setOff = restBeyond(line, from + 1, -1, start, { half, moved });
  const stopped = restBeyond(line, to - 1, 1, end, { half, moved });
  const time = stopped.time - setOff.time;
  const count = Math.min(KNOTS, to - from);
  const inclinationAt = (now: number): number =>
    setOff.within(now) ??
    stopped.within(now) ??
    smoothedAt(corrected, now, half) ??
    between(corrected, smooth, now);
  const knots = Array.from({ length: count }, (_, k) => {
    const at = (time * (k + 1)) / count;
    return { time: at, inclination: k === count - 1 ? end : inclinationAt(setOff.time + at) };
  });
  const known = {
    smoothedOver: treatment.smoothing,
    scatter: scatterOf(corrected, noise, half),
    before,
    after,
  };
  return { start, knots, noise, readings: known, notes: gapNotes(readings) };
}

/** Sign, zero, face and lag put right, and no jump where the instrument counts on from +180° to −180°. */
function correctedOf(readings: readonly Reading[], { reversed, face, zero, lag }: Treatment): Reading[] {
  const sign = reversed ? -1 : 1;
  const turns = (angle: number) => Math.round(angle / TURN) * TURN;
  let last = 0;
  return readings.map(({ time, angle }, index) => {
    const raw = sign * (angle - zero) - face;
    // The first is brought within half a turn of level, each later one within half a turn of the one before.
    last = raw - (index === 0 ? turns(raw) : turns(raw - last));
    return { time: time - lag, angle: last };
  });
}

/** Whether the readings rise where a pour must fall: the sign is then reversed. */
export function looksReversed(readings: readonly Reading[]): boolean {
  const [first, last] = [readings[0]!, readings.at(-1)!];
  return last.angle > first.angle;
}

/** Where it stood: the mean of all readings at rest, less noisy than any one of them. */
const meanAngle = (readings: readonly Reading[]): number =>
  readings.reduce((sum, { angle }) => sum + angle, 0) / readings.length;

/** Parabola through the readings near a time, least squares (Savitzky and Golay's way, for uneven steps); null without any. */
function smoothedAt(readings: readonly Reading[], time: number, half: number): number | null {
  const near = readings.filter((one) => Math.abs(one.time - time) <= half + 1e-12);
  if (near.length === 0) return null;
  const order = Math.min(2, near.length - 1);
  const scale = half || 1;
  const sums = new Array<number>(2 * order + 1).fill(0);
  const right = new Array<number>(order + 1).fill(0);
  for (const one of near) {
    const u = (one.time - time) / scale;
    for (let p = 0; p < sums.length; p++) sums[p] = sums[p]! + u ** p;
    for (let p = 0; p < right.length; p++) right[p] = right[p]! + one.angle * u ** p;
  }
  return valueAtMiddle(sums, right);
}

/** First unknown of the normal equations, by elimination. */
function valueAtMiddle(sums: readonly number[], right: readonly number[]): number {
  const n = right.length;
  const rows = right.map((value, i) => [...Array.from({ length: n }, (_, j) => sums[i + j]!), value]);
  for (let i = n - 1; i > 0; i--) {
    for (let k = 0; k < i; k++) {
      const factor = rows[k]![i]! / rows[i]![i]!;
      for (let j = 0; j <= n; j++) rows[k]![j] = rows[k]![j]! - factor * rows[i]![j]!;
    }
  }
  return rows[0]![n]! / rows[0]![0]!;
}

/** Scatter of one reading from that about a line which follows it: the parabola takes 9/4n of its square off, n readings in reach. */
function scatterOf(readings: readonly Reading[], noise: number, half: number): number {
  const spacing = (readings.at(-1)!.time - readings[0]!.time) / (readings.length - 1);
  const followed = 9 / (4 * ((2 * half) / spacing + 1));
  return followed < 0.9 ? noise / Math.sqrt(1 - followed) : noise;
}

/** Where it stands at the beginning and at the end: means, because a parabola at the edge follows the noise. */
function standsAt(readings: readonly Reading[], over: number): [begin: number, end: number] {
  const [first, last] = [readings[0]!.time, readings.at(-1)!.time];
  return [
    meanAngle(readings.filter(({ time }) => time <= first + over)),
    meanAngle(readings.filter(({ time }) => time >= last - over)),
  ];
}

/** Where the smoothed line first leaves where it stood by more than `moved`, and where it is last away from its end. */
function turningStretch(
  smooth: readonly number[],
  [begin, end]: readonly [number, number],
  moved: number,
): [number, number] {
  let from = smooth.findIndex((angle) => Math.abs(angle - begin) > moved);
  from = Math.max(0, from - 1);
  let to = smooth.length - 1;
  while (to > from + 1 && Math.abs(smooth[to - 1]! - end) <= moved) to--;
  return [from, to];
}

function between(readings: readonly Reading[], smooth: readonly number[], time: number): number {
  const after = Math.min(
    Math.max(
      1,
      readings.findIndex((one) => one.time >= time - 1e-12),
    ),
    readings.length - 1,
  );
  const [a, b] = [readings[after - 1]!, readings[after]!];
  const share = Math.min(1, (time - a.time) / (b.time - a.time));
  return smooth[after - 1]! + share * (smooth[after]! - smooth[after - 1]!);
}

function gapNotes(readings: readonly Reading[]): Issue[] {
  const steps = readings.slice(1).map((one, i) => one.time - readings[i]!.time);
  const usual = [...steps].sort((a, b) => a - b)[Math.floor(steps.length / 2)]!;
  return steps.flatMap((step, i) => {
    if (step <= GAP * usual) return [];
    const at = readings[i]!.time.toFixed(2);
    return [
      {
        path: 'file',
        message: `Nothing was read for ${step.toFixed(2)} s after ${at} s.`,
        remedy: 'The gap is bridged; measure again if it matters.',
      },
    ];
  });
}
