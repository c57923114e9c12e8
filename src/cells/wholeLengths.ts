import type { Point, Section } from '$src/core/section/section';
import { LENGTH, type PageUnits } from '$src/core/units';

/** Lengths a shop would set out by itself: whole millimetres, or twentieths of an inch. */
const STEP = { mm: 1, in: 0.05 } as const;

/** The length [m] that a rule in these units would show beside it; never nought for what is not. */
export function wholeLength(length: number, unit: PageUnits['length']): number {
  const { toShown, fromShown } = LENGTH[unit];
  const steps = Math.round(toShown(length) / STEP[unit]);
  return fromShown(Number(((steps === 0 ? Math.sign(length) : steps) * STEP[unit]).toFixed(2)));
}

/** A shape to begin from, with every length as it would be drawn in these units. Areas of vents stay. */
export function wholeSection(section: Section, unit: PageUnits['length']): Section {
  const whole = (length: number): number => wholeLength(length, unit);
  const point = ({ x, y }: Point): Point => ({ x: whole(x), y: whole(y) });
  return {
    ...section,
    floor: section.floor.map(point),
    roof: section.roof.map(point),
    regions: section.regions.map((region) => ({
      ...region,
      end: whole(region.end),
      width: whole(region.width),
      ...(region.widthAtEnd === undefined ? {} : { widthAtEnd: whole(region.widthAtEnd) }),
    })),
    mouth: whole(section.mouth),
    pivot: point(section.pivot),
    vents: section.vents.map((vent) => ({ ...vent, place: whole(vent.place) })),
  };
}
