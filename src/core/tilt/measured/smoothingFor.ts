import { AT_EDGE, parabolaAt } from './parabola';
import type { Reading } from './readRows';
import { unwrapped } from './unwrapped';

/** Readings that a parabola has to go through before what they stray from it tells their scatter: it meets three exactly. */
export const FEWEST_NEAR = 5;
/** Shorter takes little off the noise of a phone, which gives 25 to 50 readings a second [s]. Ours. */
const SHORTEST = 0.2;
/** Each time that is tried is longer by this, up to this share of the turn and no longer than this [s]. */
const LONGER = 1.25;
const OF_TURN = 0.5;
const LONGEST = 5;
/** Readings left out, one after another, at even places: enough to rank times, and no wait with a long file. */
const LEFT_OUT = 240;
/** The turn: where the angle is this share of the way from either end, and as much again of its time on either side. */
const UNDER_WAY = 0.1;
const BESIDE = 0.25;

/**
 * Time to smooth readings over [s], by their own noise: each of a ladder of times is tried by leaving one reading out and
 * foretelling it from its neighbours (cross-validation). The best time foretells best; taken is the longest that
 * foretells as well within one standard error of the difference (the one-standard-error rule of Breiman, Friedman, Olshen
 * and Stone, 1984, on differences), because what the pour feels is the rate, and a rate is noisier than an angle.
 * No shorter than 0.2 s and than five readings; rests count a quarter of the turn on either side; no longer than half of the turn and
 * than 5 s. These bounds are ours.
 */
export function smoothingFor(readings: readonly Reading[]): number {
  const all = unwrapped(readings);
  const turn = turnOf(all);
  const least = leastSmoothing(all);
  const most = Math.max(least, Math.min(LONGEST, OF_TURN * (all[turn.to]!.time - all[turn.from]!.time)));
  const tried: { readonly over: number; readonly off: readonly number[] }[] = [];
  for (let over = least; over <= most; over = roundUp(over * LONGER))
    tried.push({ over, off: foretold(all, turn, over) });
  const best = tried.reduce((one, other) => (mean(other.off) < mean(one.off) ? other : one));
  return tried.findLast(({ off }) => isAsGood(off, best.off))!.over;
}

/** The shortest time that spans enough readings at their usual step to tell their scatter [s]. */
export function leastSmoothing(readings: readonly Reading[]): number {
  return Math.max(SHORTEST, roundUp((FEWEST_NEAR - 1) * usualStep(readings)));
}

/** The middle one of the times from reading to reading [s]. */
export function usualStep(readings: readonly Reading[]): number {
  const steps = readings.slice(1).map((one, i) => one.time - readings[i]!.time);
  return steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)]!;
}

/** To the next of a hundredth of a second, of a tenth above one: a field shows it; not less, or the outermost fall out. */
function roundUp(time: number): number {
  const parts = time > 1 ? 10 : 100;
  return Math.ceil(time * parts - ROUNDED) / parts;
}

/** A time just above a whole part is one by the rounding of numbers. */
const ROUNDED = 1e-6;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A phone may lie still for a minute before a turn of three seconds: at rest the longest time is always the best. */
function turnOf(readings: readonly Reading[]): Stretch {
  const [first, last] = [readings[0]!, readings.at(-1)!];
  const share = ({ angle }: Reading) => (angle - first.angle) / (last.angle - first.angle || 1);
  const begins = Math.max(0, readings.findIndex((one) => share(one) > UNDER_WAY) - 1);
  const ends = Math.max(
    begins,
    readings.findLastIndex((one) => share(one) < 1 - UNDER_WAY),
  );
  const beside = BESIDE * (readings[ends]!.time - readings[begins]!.time);
  const from = readings.findIndex(({ time }) => time >= readings[begins]!.time - beside);
  const to = readings.findLastIndex(({ time }) => time <= readings[ends]!.time + beside);
  return { from, to: Math.max(from + 1, to) };
}

/** Squares of how far readings of the turn lie from what their neighbours foretell [rad²]. */
function foretold(readings: readonly Reading[], { from, to }: Stretch, over: number): number[] {
  const step = Math.max(1, Math.ceil((to - from + 1) / LEFT_OUT));
  const squares: number[] = [];
  for (let i = from; i <= to; i += step) {
    const told = parabolaAt(neighbours(readings, i, over / 2), readings[i]!.time, over / 2);
    if (told !== null) squares.push((readings[i]!.angle - told) ** 2);
  }
  return squares;
}

function neighbours(readings: readonly Reading[], own: number, half: number): Reading[] {
  const isNear = (i: number) => Math.abs(readings[i]!.time - readings[own]!.time) <= half + AT_EDGE;
  let [from, to] = [own, own];
  while (from > 0 && isNear(from - 1)) from--;
  while (to < readings.length - 1 && isNear(to + 1)) to++;
  return [...readings.slice(from, own), ...readings.slice(own + 1, to + 1)];
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Whether it is off no more than the best by one standard error of what they differ by. */
function isAsGood(off: readonly number[], best: readonly number[]): boolean {
  const more = off.map((one, i) => one - (best[i] ?? one));
  const middle = mean(more);
  const spread = mean(more.map((one) => (one - middle) ** 2));
  return middle <= Math.sqrt(spread / more.length);
}
