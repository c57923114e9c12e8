import type { Issue } from '$src/core/issue';
import { fromDegrees } from '$src/core/units';
import type { Knot, KnownReadings } from '../tilt';
import { AT_EDGE, parabolaAt } from './parabola';
import type { Reading } from './readRows';
import { restBeyond } from './restBeyond';
import { FEWEST_NEAR, leastSmoothing, usualStep } from './smoothingFor';
import { unwrapped } from './unwrapped';

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
  /** Root mean square of readings about the smoothed line [rad]; null where too few are near it to tell. */
  readonly noise: number | null;
  readonly readings: KnownReadings;
  readonly notes: readonly Issue[];
}

/** The body has begun to turn, or is at rest again, when it is this far from where it stood [rad]. */
const MOVED = fromDegrees(0.5);
/** Or further, by so many times the scatter of the readings: noise that looks like a beginning would come too early. */
const NOISY = 3;
const KNOTS = 60;
/** So long from the first reading, and before the last, it is taken to stand [s]. */
const SURELY = 0.2;
/** Steps of a file are rounded to its digits: a window may be short of its readings by this share. */
const ROUNDED = 0.05;
/** A gap this many usual steps long is named. */
const GAP = 5;

/** Readings to a tilt: corrected, smoothed, cut to the stretch that turns, and thinned to knots at even times. */
export function treatReadings(readings: readonly Reading[], treatment: Treatment): Treated {
  const corrected = correctedOf(readings, treatment);
  const half = treatment.smoothing / 2;
  const smooth = smoothedLine(corrected, half);
  const about = scatterAbout(corrected, half, smooth);
  // Too few readings near tell no scatter: that of one is then taken from a line through more of them.
  const { noise, scatter } = about ?? scatterAbout(corrected, leastSmoothing(corrected) / 2, null)!;
  const moved = Math.max(MOVED, NOISY * noise);
  const [from, to] = turningStretch(smooth, standsAt(corrected, treatment.smoothing, moved), moved);
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
    scatter,
    before,
    after,
  };
  return { start, knots, noise: about?.noise ?? null, readings: known, notes: gapNotes(readings) };
}

/** Sign, zero, face and lag put right, without the jumps of a count. */
function correctedOf(readings: readonly Reading[], { reversed, face, zero, lag }: Treatment): Reading[] {
  const sign = reversed ? -1 : 1;
  return unwrapped(
    readings.map(({ time, angle }) => ({ time: time - lag, angle: sign * (angle - zero) - face })),
  );
}

/** Whether the readings rise where a pour must fall: the sign is then reversed. */
export function looksReversed(readings: readonly Reading[]): boolean {
  const [first, last] = [readings[0]!, readings.at(-1)!];
  return last.angle > first.angle;
}

/** Where it stood: the mean of all readings at rest, less noisy than any one of them. */
const meanAngle = (readings: readonly Reading[]): number =>
  readings.reduce((sum, { angle }) => sum + angle, 0) / readings.length;

/** Parabola through the readings near a time; null without any. */
function smoothedAt(readings: readonly Reading[], time: number, half: number): number | null {
  return parabolaAt(near(readings, time, half), time, half);
}

const near = (readings: readonly Reading[], time: number, half: number): Reading[] =>
  readings.filter((one) => Math.abs(one.time - time) <= half + AT_EDGE);

const smoothedLine = (readings: readonly Reading[], half: number): number[] =>
  readings.map(({ time }) => smoothedAt(readings, time, half)!);

interface Scatter {
  /** Root mean square of readings about the line [rad]. */
  readonly noise: number;
  /** Standard deviation of one reading [rad]. */
  readonly scatter: number;
}

/**
 * How readings scatter about the line: a parabola through so few that it meets them tells nothing of it, which is null.
 * One reading scatters more than about a line which follows it: the parabola takes 9/4n of its square off, n in reach.
 */
function scatterAbout(
  readings: readonly Reading[],
  half: number,
  line: readonly number[] | null,
): Scatter | null {
  const isTold = 2 * half >= (FEWEST_NEAR - 1) * usualStep(readings) * (1 - ROUNDED);
  if (!isTold) return null;
  const smooth = line ?? smoothedLine(readings, half);
  const squares = readings.reduce((sum, { angle }, i) => sum + (angle - smooth[i]!) ** 2, 0);
  const noise = Math.sqrt(squares / readings.length);
  const spacing = (readings.at(-1)!.time - readings[0]!.time) / (readings.length - 1);
  const followed = 9 / (4 * ((2 * half) / spacing + 1));
  return { noise, scatter: followed < 0.9 ? noise / Math.sqrt(1 - followed) : noise };
}

/**
 * Where it stands at the beginning and at the end: means, because a parabola at the edge follows the noise. A rest that
 * is shorter than the readings are smoothed over counts as long as it lasts.
 */
function standsAt(readings: readonly Reading[], over: number, moved: number): [begin: number, end: number] {
  return [standing(readings, over, moved), standing(readings.toReversed(), over, moved)];
}

/** Mean of the readings before it is seen to move, the first of them by their time alone. */
function standing(readings: readonly Reading[], over: number, moved: number): number {
  const since = ({ time }: Reading): number => Math.abs(time - readings[0]!.time);
  const still: Reading[] = [];
  for (const one of readings) {
    const isStill = since(one) <= SURELY || Math.abs(one.angle - meanAngle(still)) <= moved;
    if (since(one) > over || !isStill) break;
    still.push(one);
  }
  return meanAngle(still);
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
  const usual = usualStep(readings);
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
