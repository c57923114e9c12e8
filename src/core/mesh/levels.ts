import type { Mesh } from './mesh';

/**
 * How each mesh cell stores metal at one inclination. The volume under a level surface in a rotated trapezoid is
 * a quadratic between four elevations z1 ≤ z2 ≤ z3 ≤ z4: its horizontal chord grows from 0 at z1 to `chord2`
 * at z2, runs linearly to `chord3` at z3 and shrinks to 0 at z4. Elevations are lab elevations [m],
 * Z(x, y) = x sin φ + y cos φ; chords include the width [m²].
 */
export interface Levels {
  readonly z1: Float64Array;
  readonly z2: Float64Array;
  readonly z3: Float64Array;
  readonly z4: Float64Array;
  readonly chord2: Float64Array;
  readonly chord3: Float64Array;
  /** Volume at z2 [m³], and how the chord changes with level in the three stretches [m]: kept so that solving divides nothing. */
  readonly volume2: Float64Array;
  readonly opens: Float64Array;
  readonly bends: Float64Array;
  readonly closes: Float64Array;
}

export function makeLevels(cells: number): Levels {
  return {
    z1: new Float64Array(cells),
    z2: new Float64Array(cells),
    z3: new Float64Array(cells),
    z4: new Float64Array(cells),
    chord2: new Float64Array(cells),
    chord3: new Float64Array(cells),
    volume2: new Float64Array(cells),
    opens: new Float64Array(cells),
    bends: new Float64Array(cells),
    closes: new Float64Array(cells),
  };
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
  const { z1, z2, z3, z4, chord2, chord3, volume2, opens, bends, closes } = levels;
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
    z1[i] = bottom;
    z2[i] = low;
    z3[i] = high;
    z4[i] = top;
    chord2[i] = chordLow;
    chord3[i] = chordHigh;
    volume2[i] = (chordLow * (low - bottom)) / 2;
    opens[i] = low > bottom ? chordLow / (low - bottom) : 0;
    bends[i] = chordHigh !== chordLow && high > low ? (chordHigh - chordLow) / (high - low) : 0;
    closes[i] = top > high ? chordHigh / (top - high) : 0;
  }
}

/** Volume of metal in cell i when its surface stands at elevation `level` [m³]. */
export function volumeUnder(levels: Levels, mesh: Mesh, i: number, level: number): number {
  const z1 = levels.z1[i]!;
  const z2 = levels.z2[i]!;
  const z3 = levels.z3[i]!;
  const z4 = levels.z4[i]!;
  if (level <= z1) return 0;
  if (level >= z4) return mesh.volume[i]!;
  if (level < z2) return (levels.opens[i]! * (level - z1) ** 2) / 2;
  if (level <= z3) {
    const rise = level - z2;
    return levels.volume2[i]! + (levels.chord2[i]! + (levels.bends[i]! * rise) / 2) * rise;
  }
  return mesh.volume[i]! - (levels.closes[i]! * (z4 - level) ** 2) / 2;
}

/** Level of the surface in cell i that holds `volume` [m³]; z1 when empty, z4 when full. Inverse of `volumeUnder`. */
export function levelOf(levels: Levels, mesh: Mesh, i: number, volume: number): number {
  const full = mesh.volume[i]!;
  if (volume <= 0) return levels.z1[i]!;
  if (volume >= full) return levels.z4[i]!;
  const rest = volume - levels.volume2[i]!;
  if (rest < 0) return levels.z1[i]! + Math.sqrt((2 * volume) / levels.opens[i]!);
  const z3 = levels.z3[i]!;
  const z4 = levels.z4[i]!;
  if (z3 > levels.z2[i]! && full - volume >= (levels.chord3[i]! * (z4 - z3)) / 2) {
    const chord2 = levels.chord2[i]!;
    const bend = levels.bends[i]!;
    if (bend === 0) return levels.z2[i]! + rest / chord2;
    return levels.z2[i]! + (2 * rest) / (chord2 + Math.sqrt(Math.max(0, chord2 * chord2 + 2 * bend * rest)));
  }
  const closes = levels.closes[i]!;
  return closes > 0 ? z4 - Math.sqrt((2 * (full - volume)) / closes) : z4;
}
