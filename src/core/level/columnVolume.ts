import { taperVolume } from '$src/core/section/taperVolume';
import { bulgeAt, bulged, bulgeSlopeAt, taperLevel, taperSteep } from './columnTaper';

/**
 * Exact volume of metal below a lab elevation in one column of the section.
 *
 * A column is a trapezoid between two places along the axis, with straight floor and straight roof. Turned by the
 * inclination, its horizontal chord is piecewise linear in the elevation: 0 at z1 and z4, with corners at z2 and z3.
 * Where the width tapers, the width at the middle of the chord is piecewise linear too, with the same corners, and the
 * level surface is the product of the two. So volume is piecewise quadratic, or cubic with a taper. Derived; geometry.
 */
export interface Column {
  /** Places of its two sides along the axis [m]. */
  readonly left: number;
  readonly right: number;
  readonly floorLeft: number;
  readonly floorRight: number;
  readonly roofLeft: number;
  readonly roofRight: number;
  /** Into the page at both sides, all cavities together [m]; straight in between. */
  readonly widthLeft: number;
  readonly widthRight: number;
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
  /** How far the level surface bulges over a straight course from z1 to z2, z2 to z3, z3 to z4 [m²]; 0 without a taper. */
  bulge1: number;
  bulge2: number;
  bulge3: number;
  /** Volume of the full column [m³]. */
  full: number;
}

/**
 * @param sin, cos of the inclination; cos ≥ 0 (past upright, mirror the column: see `mirrored`)
 */
export function columnLevels(column: Column, sin: number, cos: number): ColumnLevels {
  const { left, right, floorLeft, floorRight, roofLeft, roofRight, widthLeft } = column;
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
    bulge1: 0,
    bulge2: 0,
    bulge3: 0,
    full: fullVolume(column),
  };
  const lowerIsRight = a1 < a0;
  if (floorHigh <= roofLow) {
    levels.w2 = (widthLeft * length) / cos;
    levels.w3 = levels.w2;
    if (isTapered(column)) taperLevel(levels, column, lowerIsRight, a2 > a3);
    return levels;
  }
  const heightLeft = roofLeft - floorLeft;
  const heightRight = roofRight - floorRight;
  const floorFall = Math.abs(sin + ((floorRight - floorLeft) / length) * cos);
  const roofFall = Math.abs(sin + ((roofRight - roofLeft) / length) * cos);
  levels.z2 = roofLow;
  levels.z3 = floorHigh;
  levels.w2 = (widthLeft * (lowerIsRight ? heightRight : heightLeft)) / floorFall;
  levels.w3 = (widthLeft * (lowerIsRight ? heightLeft : heightRight)) / roofFall;
  if (isTapered(column)) taperSteep(levels, column, lowerIsRight, cos);
  return levels;
}

/** Volume of the full column [m³]. */
export function fullVolume(column: Column): number {
  const { left, right, floorLeft, floorRight, roofLeft, roofRight, widthLeft, widthRight } = column;
  const straight = (widthLeft * (right - left) * (roofLeft - floorLeft + roofRight - floorRight)) / 2;
  const added = taperVolume(
    right - left,
    widthRight - widthLeft,
    roofLeft - floorLeft,
    roofRight - floorRight,
  );
  return straight + added;
}

const isTapered = ({ widthLeft, widthRight }: Column): boolean => widthLeft !== widthRight;

/** Volume below the elevation [m³]. */
export function volumeBelow(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3, bulge1, bulge2, bulge3, full } = levels;
  if (elevation <= z1) return 0;
  if (elevation >= z4) return full;
  if (elevation <= z2)
    return (w2 * (elevation - z1) * (elevation - z1)) / (2 * (z2 - z1)) + bulged(bulge1, z1, z2, elevation);
  if (elevation >= z3)
    return (
      full - (w3 * (z4 - elevation) * (z4 - elevation)) / (2 * (z4 - z3)) + bulged(bulge3, z4, z3, elevation)
    );
  const here = w2 + ((w3 - w2) * (elevation - z2)) / (z3 - z2);
  const upTo2 = (w2 * (z2 - z1)) / 2 + (bulge1 * (z2 - z1)) / 6;
  return upTo2 + ((w2 + here) * (elevation - z2)) / 2 + bulged(bulge2, z2, z3, elevation);
}

/** Area of the level surface at the elevation [m²]: the rate of volume with elevation. */
export function chordAt(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3, bulge1, bulge2, bulge3 } = levels;
  if (elevation < z1 || elevation > z4) return 0;
  if (elevation < z2) return (w2 * (elevation - z1)) / (z2 - z1) + bulgeAt(bulge1, z1, z2, elevation);
  if (elevation > z3) return (w3 * (z4 - elevation)) / (z4 - z3) + bulgeAt(bulge3, z3, z4, elevation);
  if (!(z3 > z2)) return Math.max(w2, w3);
  return w2 + ((w3 - w2) * (elevation - z2)) / (z3 - z2) + bulgeAt(bulge2, z2, z3, elevation);
}

/** Rate of the chord with elevation [m], right-hand side at a corner. */
export function chordSlopeAt(levels: ColumnLevels, elevation: number): number {
  const { z1, z2, z3, z4, w2, w3, bulge1, bulge2, bulge3 } = levels;
  if (elevation < z1 || elevation >= z4) return 0;
  if (elevation < z2) return w2 / (z2 - z1) + bulgeSlopeAt(bulge1, z1, z2, elevation);
  if (elevation < z3) return (w3 - w2) / (z3 - z2) + bulgeSlopeAt(bulge2, z2, z3, elevation);
  return -w3 / (z4 - z3) + bulgeSlopeAt(bulge3, z3, z4, elevation);
}
