import { SAME_PLACE, type Side } from './lineAt';
import type { Section } from './section';

/** Width into the page at x [m], all cavities together past the mouth; `side` decides at a region's end and at the mouth. */
export function widthAt(section: Section, x: number, side: Side): number {
  const place = side === 'right' ? x + SAME_PLACE : x - SAME_PLACE;
  const region = section.regions.find((candidate) => place < candidate.end) ?? section.regions.at(-1)!;
  return region.width * (place > section.mouth ? section.cavities : 1);
}
