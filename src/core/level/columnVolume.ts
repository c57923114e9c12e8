/**
 * Exact volume of metal below a lab elevation in one column of the section.
 *
 * A column is a trapezoid between two places along the axis, with straight floor and straight roof. Turned by the
 * inclination, its horizontal chord is piecewise linear in the elevation: 0 at z1, w2 at z2, w3 at z3, 0 at z4.
 * So volume is piecewise quadratic and can be inverted in closed form. Derived; geometry.
 */
export interface Column {
  /** Places of its two sides along the axis [m]. */
  readonly left: number;
  readonly right: number;
  readonly floorLeft: number;
  readonly floorRight: number;
  readonly roofLeft: number;
  readonly roofRight: number;
  /** Into the page, all cavities together [m]. */
  readonly width: number;
}

export interface ColumnLevels {
  /** Lab elevations of the four corners in rising order [m]. */
  z1: number;
  z2: number;
  z3: number;
  z4: number;
  /** Area of the level surface at z2 and z3 [m²]. */
  w2: number;
  w3: number;
  /** Volume of the full column [m³]. */
  full: number;
}

/**
 * @param sin, cos of the inclination; cos ≥ 0 (past upright, mirror the column: see `mirrored`)
 */
export function columnLevels(column: Column, sin: number, cos: number): ColumnLevels {
  const { left, right, floorLeft, floorRight, roofLeft, roofRight, width } = column;
  const length = right - left;
  const a0 = left * sin + floorLeft * cos;
  const a1 = right * sin + floorRight * cos;
  const a2 = right * sin + roofRight * cos;
  const a3 = left * sin + roofLeft * cos;
  const floorHigh = Math.max(a0, a1);
  const roofLow = Math.min(a2, a3);
  const levels: ColumnLevels = {
    z1: Math.min(a0, a1),
    z2: floorHigh,
    z3: roofLow,
    z4: Math.max(a2, a3),
    w2: 0,
    w3: 0,
    full: (width * length * (roofLeft - floorLeft + roofRight - floorRight)) / 2,
  };
  if (floorHigh <= roofLow) {
    levels.w2 = (width * length) / cos;
    levels.w3 = levels.w2;
    return levels;
  }
  const lowerIsRight = a1 < a0;
  const heightLeft = roofLeft - floorLeft;
  const heightRight = roofRight - floorRight;
  const floorFall = Math.abs(sin + ((floorRight - floorLeft) / length) * cos);
  const roofFall = Math.abs(sin + ((roofRight - roofLeft) / length) * cos);
  levels.z2 = roofLow;
  levels.z3 = floorHigh;
  levels.w2 = (width * (lowerIsRight ? heightRight : heightLeft)) / floorFall;
  levels.w3 = (width * (lowerIsRight ? heightLeft : heightRight)) / roofFall;
  return levels;
}

/** Volume below the elevation [m³]. */
export function volumeBelow(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3, full } = levels;
  if (elevation <= z1) return 0;
  if (elevation >= z4) return full;
  if (elevation <= z2) return (w2 * (elevation - z1) * (elevation - z1)) / (2 * (z2 - z1));
  if (elevation >= z3) return full - (w3 * (z4 - elevation) * (z4 - elevation)) / (2 * (z4 - z3));
  const here = w2 + ((w3 - w2) * (elevation - z2)) / (z3 - z2);
  return (w2 * (z2 - z1)) / 2 + ((w2 + here) * (elevation - z2)) / 2;
}

/** Area of the level surface at the elevation [m²]: the rate of volume with elevation. */
export function chordAt(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3 } = levels;
  if (elevation < z1 || elevation > z4) return 0;
  if (elevation < z2) return (w2 * (elevation - z1)) / (z2 - z1);
  if (elevation > z3) return (w3 * (z4 - elevation)) / (z4 - z3);
  return z3 > z2 ? w2 + ((w3 - w2) * (elevation - z2)) / (z3 - z2) : Math.max(w2, w3);
}

/** Rate of the chord with elevation [m], right-hand side at a corner. */
export function chordSlopeAt(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3 } = levels;
  if (elevation < z1 || elevation >= z4) return 0;
  if (elevation < z2) return w2 / (z2 - z1);
  if (elevation < z3) return (w3 - w2) / (z3 - z2);
  return -w3 / (z4 - z3);
}
