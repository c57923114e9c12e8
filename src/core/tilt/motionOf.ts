import { knotMotion } from './knotMotion';
import { dryRun } from './machine/dryRun';
import type { Motion, ProgrammedTilt, Tilt } from './tilt';
import { type Turn, turnsOf } from './turns';

/** A stretch of time with one acceleration. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly inclination: number;
  readonly rate: number;
  readonly acceleration: number;
}

/**
 * The inclination in time of a tilt that passed `checkTilt`; a machine is let go without metal in it.
 * @throws RangeError when the tilt is front-led: only its pour knows its motion
 */
export function motionOf(tilt: Tilt): Motion {
  switch (tilt.kind) {
    case 'front-led':
      throw new RangeError('tilt: got front-led, expected one that is known without a pour');
    case 'machine':
      return dryRun(tilt).motion;
    case 'drawn':
    case 'measured':
      return knotMotion(tilt);
    default:
      return programmedMotion(tilt);
  }
}

/**
 * Straight lines from knot to knot, joined by parabolas of length `smoothing`: the rate comes up from rest over
 * [0, smoothing], changes over smoothing/2 on either side of a knot, and goes to rest over the last `smoothing`.
 * So a stage given by time takes exactly that time, and a steady turn by δ at rate r takes δ/r + smoothing.
 * At an interior knot the body passes (change of rate) × smoothing/8 off the knot's inclination, as any blend must.
 * Smoothing 0 is an abrupt start and stop: the rate jumps and the acceleration is 0 everywhere.
 */
function programmedMotion(tilt: ProgrammedTilt): Motion {
  const turns = turnsOf(tilt);
  const pieces = joined(tilt.start, rateKnots(turns, tilt.smoothing));
  const end = turns[turns.length - 1]!.to;
  const duration = pieces[pieces.length - 1]!.to;
  return {
    duration,
    start: tilt.start,
    end,
    inclinationAt(time) {
      if (time <= 0) return tilt.start;
      if (time >= duration) return end;
      const { from, inclination, rate, acceleration } = pieceAt(pieces, time);
      const elapsed = time - from;
      return inclination + elapsed * (rate + (acceleration * elapsed) / 2);
    },
    rateAt(time) {
      if (time < 0 || time >= duration) return 0;
      const { from, rate, acceleration } = pieceAt(pieces, time);
      return rate + acceleration * (time - from);
    },
    accelerationAt(time) {
      if (time < 0 || time >= duration) return 0;
      return pieceAt(pieces, time).acceleration;
    },
  };
}

/** A stretch over which the rate goes evenly from one value to another. */
interface RateKnots {
  readonly from: number;
  readonly to: number;
  readonly rateFrom: number;
  readonly rateTo: number;
}

function rateKnots(turns: readonly Turn[], smoothing: number): RateKnots[] {
  const knots: RateKnots[] = [];
  const last = turns.length - 1;
  let reached = 0;
  let knot = 0;
  let rateBefore = 0;
  const go = (to: number, rateFrom: number, rateTo: number) => {
    if (to > reached) knots.push({ from: reached, to, rateFrom, rateTo });
    reached = Math.max(reached, to);
  };
  turns.forEach((turn, index) => {
    const rate = -turn.rate;
    go(index === 0 ? smoothing : knot + smoothing / 2, rateBefore, rate);
    knot += turn.time;
    go(knot - (index === last ? smoothing : smoothing / 2), rate, rate);
    rateBefore = rate;
  });
  go(knot, rateBefore, 0);
  return knots;
}

function joined(start: number, knots: readonly RateKnots[]): Piece[] {
  let inclination = start;
  return knots.map(({ from, to, rateFrom, rateTo }) => {
    const piece = { from, to, inclination, rate: rateFrom, acceleration: (rateTo - rateFrom) / (to - from) };
    inclination += ((rateFrom + rateTo) / 2) * (to - from);
    return piece;
  });
}

function pieceAt(pieces: readonly Piece[], time: number): Piece {
  let index = 0;
  while (index < pieces.length - 1 && time >= pieces[index]!.to) index++;
  return pieces[index]!;
}
