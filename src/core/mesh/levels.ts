import type { Mesh } from './mesh';

/**
 * How each mesh cell stores metal at one inclination. The volume under a level surface in a rotated trapezoid is
 * a quadratic between four elevations z1 ≤ z2 ≤ z3 ≤ z4: its horizontal chord grows from 0 at z1 to `chord2`
 * at z2, runs linearly to `chord3` at z3 and shrinks to 0 at z4. Elevations are lab elevations [m],
 * Z(x, y) = x sin φ + y cos φ; chords include the width [m²].
 *
 * The figures of a cell lie side by side, each at its own place from i × FIGURES on: at every turn of a loop the engine
 * looks over each array that it touches, and an array for each figure costs a pour a twentieth more.
 */
export type Levels = Float64Array;

export const Z1 = 0;
export const Z2 = 1;
export const Z3 = 2;
export const Z4 = 3;
export const CHORD2 = 4;
export const CHORD3 = 5;
/** Volume at z2 [m³], and how the chord changes with level in the three stretches [m]: kept so that solving divides nothing. */
export const VOLUME2 = 6;
export const OPENS = 7;
export const BENDS = 8;
export const CLOSES = 9;
/** How many figures a cell has. */
export const FIGURES = 10;

export function makeLevels(cells: number): Levels {
  return new Float64Array(FIGURES * cells);
}

/** Elevation of the lowest place of all cells [m]. */
export function lowestLevel(levels: Levels): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let k = Z1; k < levels.length; k += FIGURES) lowest = Math.min(lowest, levels[k]!);
  return lowest;
}

/** Elevation of the highest place of all cells [m]. */
export function highestLevel(levels: Levels): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let k = Z4; k < levels.length; k += FIGURES) highest = Math.max(highest, levels[k]!);
  return highest;
}

/**
 * Sets the storage of all cells for the inclination with the given sine and cosine (cosine ≥ 0).
 * `from` and `to` bound the cells set, all by default. A cell is flat when its whole floor lies under its whole roof, steep otherwise.
 */
export function rotateLevels(
  levels: Levels,
  mesh: Mesh,
  sin: number,
  cos: number,
  from = 0,
  to = mesh.cells - 1,
): void {
  const { x, floorLeft, floorRight, roofLeft, roofRight, width } = mesh;
  const perCos = 1 / cos;
  for (let i = from; i <= to; i++) {
    const xl = x[i]!;
    const xr = x[i + 1]!;
    const bl = floorLeft[i]!;
    const br = floorRight[i]!;
    const cl = roofLeft[i]!;
    const cr = roofRight[i]!;
    const floorAtLeft = xl * sin + bl * cos;
    const floorAtRight = xr * sin + br * cos;
    const roofAtRight = xr * sin + cr * cos;
    const roofAtLeft = xl * sin + cl * cos;
    const lowerIsRight = floorAtRight < floorAtLeft;
    const floorHigh = lowerIsRight ? floorAtLeft : floorAtRight;
    const roofLow = roofAtRight < roofAtLeft ? roofAtRight : roofAtLeft;
    const bottom = lowerIsRight ? floorAtRight : floorAtLeft;
    const top = roofAtRight < roofAtLeft ? roofAtLeft : roofAtRight;
    let low = floorHigh;
    let high = roofLow;
    let chordLow: number;
    let chordHigh: number;
    if (floorHigh <= roofLow) {
      chordLow = chordHigh = width[i]! * (xr - xl) * perCos;
    } else {
      low = roofLow;
      high = floorHigh;
      const floorFall = Math.abs(sin + ((br - bl) / (xr - xl)) * cos);
      const roofFall = Math.abs(sin + ((cr - cl) / (xr - xl)) * cos);
      chordLow = (width[i]! * (lowerIsRight ? cr - br : cl - bl)) / floorFall;
      chordHigh = (width[i]! * (lowerIsRight ? cl - bl : cr - br)) / roofFall;
    }
    const k = i * FIGURES;
    levels[k + Z1] = bottom;
    levels[k + Z2] = low;
    levels[k + Z3] = high;
    levels[k + Z4] = top;
    levels[k + CHORD2] = chordLow;
    levels[k + CHORD3] = chordHigh;
    levels[k + VOLUME2] = (chordLow * (low - bottom)) / 2;
    levels[k + OPENS] = low > bottom ? chordLow / (low - bottom) : 0;
    levels[k + BENDS] = chordHigh !== chordLow && high > low ? (chordHigh - chordLow) / (high - low) : 0;
    levels[k + CLOSES] = top > high ? chordHigh / (top - high) : 0;
  }
}

/** Volume of metal in cell i when its surface stands at elevation `level` [m³]. */
export function volumeUnder(levels: Levels, mesh: Mesh, i: number, level: number): number {
  const k = i * FIGURES;
  const z1 = levels[k + Z1]!;
  const z2 = levels[k + Z2]!;
  const z3 = levels[k + Z3]!;
  const z4 = levels[k + Z4]!;
  if (level <= z1) return 0;
  if (level >= z4) return mesh.volume[i]!;
  if (level < z2) return (levels[k + OPENS]! * (level - z1) ** 2) / 2;
  if (level <= z3) {
    const rise = level - z2;
    return levels[k + VOLUME2]! + (levels[k + CHORD2]! + (levels[k + BENDS]! * rise) / 2) * rise;
  }
  return mesh.volume[i]! - (levels[k + CLOSES]! * (z4 - level) ** 2) / 2;
}

/** Chord of the level surface in cell i at elevation `level` [m²]: how fast `volumeUnder` grows with it. */
export function chordAt(levels: Levels, i: number, level: number): number {
  const k = i * FIGURES;
  if (level <= levels[k + Z1]! || level >= levels[k + Z4]!) return 0;
  const low = levels[k + Z2]!;
  if (level < low) return levels[k + OPENS]! * (level - levels[k + Z1]!);
  if (level <= levels[k + Z3]!) return levels[k + CHORD2]! + levels[k + BENDS]! * (level - low);
  return levels[k + CLOSES]! * (levels[k + Z4]! - level);
}

/** Level of the surface in cell i that holds `volume` [m³]; z1 when empty, z4 when full. Inverse of `volumeUnder`. */
export function levelOf(levels: Levels, mesh: Mesh, i: number, volume: number): number {
  const k = i * FIGURES;
  const full = mesh.volume[i]!;
  if (volume <= 0) return levels[k + Z1]!;
  if (volume >= full) return levels[k + Z4]!;
  const rest = volume - levels[k + VOLUME2]!;
  if (rest < 0) return levels[k + Z1]! + Math.sqrt((2 * volume) / levels[k + OPENS]!);
  const z3 = levels[k + Z3]!;
  const z4 = levels[k + Z4]!;
  if (z3 > levels[k + Z2]! && full - volume >= (levels[k + CHORD3]! * (z4 - z3)) / 2) {
    const chord2 = levels[k + CHORD2]!;
    const bend = levels[k + BENDS]!;
    if (bend === 0) return levels[k + Z2]! + rest / chord2;
    return (
      levels[k + Z2]! + (2 * rest) / (chord2 + Math.sqrt(Math.max(0, chord2 * chord2 + 2 * bend * rest)))
    );
  }
  const closes = levels[k + CLOSES]!;
  return closes > 0 ? z4 - Math.sqrt((2 * (full - volume)) / closes) : z4;
}
