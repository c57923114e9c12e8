import type { Section } from '$src/core/section/section';
import { regionAt, widthInRegion } from '$src/core/section/widthAt';
import type { Sides } from './sides';

/** Widths of each mesh cell [m], all cavities together. */
export interface Widths {
  /** At the cell's left and right face; two-sided, so that a step in width lies on a face. */
  readonly widthLeft: Float64Array;
  readonly widthRight: Float64Array;
  /** Mean over the cell's section: its volume over its area. */
  readonly width: Float64Array;
}

/** `x` are the faces [m]; `sides` the floor and roof between them. */
export function cellWidths(section: Section, x: Float64Array, sides: Sides): Widths {
  const cells = x.length - 1;
  const widthLeft = new Float64Array(cells);
  const widthRight = new Float64Array(cells);
  for (let i = 0; i < cells; i++) {
    const centre = (x[i]! + x[i + 1]!) / 2;
    const region = regionAt(section, centre);
    const cavities = centre > section.mouth ? section.cavities : 1;
    widthLeft[i] = widthInRegion(section, region, x[i]!) * cavities;
    widthRight[i] = widthInRegion(section, region, x[i + 1]!) * cavities;
  }
  const width = widthLeft.map((left, i) => left + (widthRight[i]! - left) * shareOfRight(sides, i));
  return { widthLeft, widthRight, width };
}

/** Weight of the right face's width in the mean over the section of a cell: a half where floor and roof are parallel. */
function shareOfRight({ floorLeft, floorRight, roofLeft, roofRight }: Sides, i: number): number {
  const left = roofLeft[i]! - floorLeft[i]!;
  const right = roofRight[i]! - floorRight[i]!;
  return (left + 2 * right) / (3 * (left + right));
}
