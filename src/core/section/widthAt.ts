import { SAME_PLACE, type Side } from './lineAt';
import type { Section } from './section';

/** Width into the page at x [m], all cavities together past the mouth; `side` decides at a region's end and at the mouth. */
export function widthAt(section: Section, x: number, side: Side): number {
  const place = side === 'right' ? x + SAME_PLACE : x - SAME_PLACE;
  return widthInRegion(section, regionAt(section, place), x) * (place > section.mouth ? section.cavities : 1);
}

/** Which region a place lies in, counted from 0; beyond the last end the last. */
export function regionAt({ regions }: Section, place: number): number {
  const found = regions.findIndex((region) => place < region.end);
  return found < 0 ? regions.length - 1 : found;
}

/** Width of a region at x [m], of one cavity past the mouth; beyond its ends it keeps its end widths. */
export function widthInRegion(section: Section, index: number, x: number): number {
  const { end, width, widthAtEnd } = section.regions[index]!;
  if (widthAtEnd === undefined) return width;
  const begin = beginOf(section, index);
  if (x <= begin) return width;
  return x >= end ? widthAtEnd : width + ((widthAtEnd - width) * (x - begin)) / (end - begin);
}

/** How the width of a region grows along the axis, of one cavity past the mouth [m/m]; 0 without a taper. */
export function taperOf(section: Section, index: number): number {
  const { end, width, widthAtEnd } = section.regions[index]!;
  return widthAtEnd === undefined ? 0 : (widthAtEnd - width) / (end - beginOf(section, index));
}

/** Where a region begins along the axis [m]. */
function beginOf({ floor, regions }: Section, index: number): number {
  return index === 0 ? floor[0]!.x : regions[index - 1]!.end;
}
