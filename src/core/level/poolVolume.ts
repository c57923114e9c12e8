import { type ColumnLevels, chordAt, chordSlopeAt, volumeBelow } from './columnVolume';

/** Volume below an elevation in the columns from…to [m³]. */
export function volumeOf(
  levels: readonly ColumnLevels[],
  from: number,
  to: number,
  elevation: number,
): number {
  let volume = 0;
  for (let i = from; i <= to; i++) volume += volumeBelow(levels[i]!, elevation);
  return volume;
}

const MAX_STEPS = 100;
/** Volumes this close, relative, are one volume. */
const SAME_VOLUME = 2e-16;

/**
 * Elevation of the level surface that holds a volume in the columns from…to [m]; their top when it does not fit.
 * Volume is piecewise quadratic in elevation, so each step solves the quadratic of the piece it is in; a bracket
 * keeps steps that leave their piece honest.
 */
export function levelOf(
  levels: readonly ColumnLevels[],
  from: number,
  to: number,
  volume: number,
  guess = Number.NaN,
): number {
  let [low, high] = rangeOf(levels, from, to);
  let elevation = guess > low && guess < high ? guess : (low + high) / 2;
  for (let step = 0; step < MAX_STEPS; step++) {
    let missing = volume;
    let chord = 0;
    let slope = 0;
    for (let i = from; i <= to; i++) {
      missing -= volumeBelow(levels[i]!, elevation);
      chord += chordAt(levels[i]!, elevation);
      slope += chordSlopeAt(levels[i]!, elevation);
    }
    if (Math.abs(missing) <= SAME_VOLUME * volume) return elevation;
    if (missing > 0) low = elevation;
    else high = elevation;
    const reach = chord + Math.sqrt(Math.max(chord * chord + 2 * slope * missing, 0));
    let next = elevation + (2 * missing) / reach;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === elevation || next === low || next === high) return next;
    elevation = next;
  }
  return elevation;
}

function rangeOf(levels: readonly ColumnLevels[], from: number, to: number): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) {
    low = Math.min(low, levels[i]!.z1);
    high = Math.max(high, levels[i]!.z4);
  }
  return [low, high];
}
