import { exponentialLessOne, logarithmOfOnePlus } from '$src/core/elementary/exponential';
import { liquidEnthalpy } from './enthalpy';
import type { Freezing } from './freezing';

/**
 * Lumped metal that loses heat to surroundings of one temperature: dH/dt = −r (T(H) − T_out), with
 * r = transfer × area / mass [W/(kg K)]. H(T) is three straight pieces (enthalpy.ts), so each piece is an
 * exponential (a straight line on a plateau) and both answers are exact. Below: `Piece` is one of the three.
 */
interface Piece {
  /** Heat content and temperature at its lower end; the solid's is its upper end, it has no lower. */
  readonly enthalpy: number;
  readonly temperature: number;
  /** dT/dH [kg K/J]; 0 on a plateau. */
  readonly slope: number;
}

/** Heat content [J/kg] after `duration` [s] of cooling, starting from H [J/kg]. */
export function coolFor(
  freezing: Freezing,
  enthalpy: number,
  rate: number,
  surroundings: number,
  duration: number,
): number {
  let from = enthalpy;
  let left = duration;
  for (const floor of [liquidEnthalpy(freezing), 0]) {
    if (from <= floor) continue;
    const needed = timeInPiece(pieceAbove(freezing, floor), from, floor, rate, surroundings);
    if (needed > left) return along(pieceAbove(freezing, floor), from, rate, surroundings, left);
    from = floor;
    left -= needed;
  }
  return along(solidPiece(freezing), from, rate, surroundings, left);
}

/** Time [s] to cool from one heat content to a lower one [J/kg]; Infinity when the surroundings are too hot for it. */
export function coolingTime(
  freezing: Freezing,
  from: number,
  to: number,
  rate: number,
  surroundings: number,
): number {
  let time = 0;
  let start = from;
  for (const floor of [liquidEnthalpy(freezing), 0]) {
    if (start <= floor || start <= to) continue;
    const end = Math.max(floor, to);
    time += timeInPiece(pieceAbove(freezing, floor), start, end, rate, surroundings);
    start = end;
  }
  return start > to ? time + timeInPiece(solidPiece(freezing), start, to, rate, surroundings) : time;
}

function pieceAbove(freezing: Freezing, floor: number): Piece {
  const { solidus, liquidus, liquidHeat } = freezing;
  const liquid = liquidEnthalpy(freezing);
  if (floor === liquid) return { enthalpy: liquid, temperature: liquidus, slope: 1 / liquidHeat };
  return { enthalpy: 0, temperature: solidus, slope: (liquidus - solidus) / liquid };
}

function solidPiece(freezing: Freezing): Piece {
  return { enthalpy: 0, temperature: freezing.solidus, slope: 1 / freezing.solidHeat };
}

const excess = (piece: Piece, enthalpy: number, surroundings: number): number =>
  piece.temperature + piece.slope * (enthalpy - piece.enthalpy) - surroundings;

function timeInPiece(piece: Piece, from: number, to: number, rate: number, surroundings: number): number {
  const hot = excess(piece, from, surroundings);
  const cool = excess(piece, to, surroundings);
  if (cool <= 0 || rate <= 0) return Number.POSITIVE_INFINITY;
  const fall = (hot - cool) / cool;
  // The logarithm of a range that all but closes; log1p keeps its digits, and the plateau is the limit.
  return fall > 0
    ? (((from - to) / (rate * cool)) * logarithmOfOnePlus(fall)) / fall
    : (from - to) / (rate * cool);
}

function along(piece: Piece, from: number, rate: number, surroundings: number, time: number): number {
  const hot = excess(piece, from, surroundings);
  const exponent = rate * piece.slope * time;
  const share = exponent > 0 ? -exponentialLessOne(-exponent) / exponent : 1;
  return from - rate * hot * time * share;
}
