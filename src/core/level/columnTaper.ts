import type { Column, ColumnLevels } from './columnVolume';

/** What a width that tapers makes of the level surfaces of a column, see `columnLevels`. */

/** A column whose whole floor lies under its whole roof: between z2 and z3 the chord is its whole length. */
export function taperLevel(
  levels: ColumnLevels,
  { widthLeft, widthRight }: Column,
  lowerIsRight: boolean,
  higherIsRight: boolean,
): void {
  const middle = (widthLeft + widthRight) / 2;
  const lowest = lowerIsRight ? widthRight : widthLeft;
  const highest = higherIsRight ? widthRight : widthLeft;
  spread(levels, widthLeft, lowest, middle, middle, highest);
}

/** A column turned so far that its chord runs from floor to roof between z2 and z3. */
export function taperSteep(levels: ColumnLevels, column: Column, lowerIsRight: boolean, cos: number): void {
  const { left, right, widthLeft, widthRight } = column;
  const lowest = lowerIsRight ? widthRight : widthLeft;
  const highest = lowerIsRight ? widthLeft : widthRight;
  // Half of the run along the axis of the chord that starts at the low wall, and of that which ends at the high wall.
  const slope = ((highest - lowest) * cos) / (2 * widthLeft * (right - left));
  const second = lowest + slope * levels.w2;
  const third = highest - slope * levels.w3;
  spread(levels, widthLeft, lowest, second, third, highest);
}

/**
 * From level surfaces of one width to those of the width at the middle of each chord, given at z1 to z4: a product of
 * two straight courses is a straight one and a bulge.
 */
function spread(
  levels: ColumnLevels,
  from: number,
  first: number,
  second: number,
  third: number,
  fourth: number,
): void {
  const chord2 = levels.w2 / from;
  const chord3 = levels.w3 / from;
  levels.w2 = chord2 * second;
  levels.w3 = chord3 * third;
  levels.bulge1 = -chord2 * (second - first);
  levels.bulge2 = -(chord3 - chord2) * (third - second);
  levels.bulge3 = chord3 * (fourth - third);
}

/** Volume that a bulge has added between the lower end of its stretch and an elevation [m³]. */
export function bulged(bulge: number, from: number, to: number, elevation: number): number {
  if (bulge === 0) return 0;
  const t = (elevation - from) / (to - from);
  return bulge * (to - from) * t * t * (0.5 - t / 3);
}

/** What a bulge adds to the level surface at an elevation [m²], and to its rate with elevation [m]. */
export function bulgeAt(bulge: number, from: number, to: number, elevation: number): number {
  if (bulge === 0) return 0;
  const t = (elevation - from) / (to - from);
  return bulge * t * (1 - t);
}

export function bulgeSlopeAt(bulge: number, from: number, to: number, elevation: number): number {
  if (bulge === 0) return 0;
  return (bulge * (from + to - 2 * elevation)) / ((to - from) * (to - from));
}
