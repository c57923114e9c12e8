import { breakPoints } from '$src/core/section/breakPoints';
import { heightAt } from '$src/core/section/cavity';
import { SAME_PLACE } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';
import { withCorner } from './outlineEdit';

/** A stretch of the die along its axis [m]. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The die or one of its regions, and what a founder calls it. */
export interface DiePart extends Span {
  readonly name: string;
  /** Its place among the regions of the section; null for the whole die. */
  readonly region: number | null;
}

/** A straight piece shorter than this share of its die is a piece of a curve, and stretching it alone would spoil the curve. */
const LEAST_SHARE = 0.25;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_PLACE;

/** The whole die, and, where it has several, each region of it past the mouth. */
export function dieParts({ floor, regions, mouth }: Section): DiePart[] {
  const whole = { name: 'the whole die', region: null, from: mouth, to: floor.at(-1)!.x };
  const parts = regions.flatMap(({ name, end }, region) => {
    const begin = region === 0 ? floor[0]!.x : regions[region - 1]!.end;
    return end > mouth + SAME_PLACE ? [{ name, region, from: Math.max(mouth, begin), to: end }] : [];
  });
  return parts.length > 1 ? [whole, ...parts] : [whole];
}

/**
 * Where that part gives way when its length is changed. Of the whole die it is the longest piece without a corner, so that
 * gates, lips and bosses keep their length; a die drawn all in short pieces, and a region, gives way evenly along all of it.
 */
export function givingWay(section: Section, part: DiePart): Span {
  if (part.region !== null) return part;
  const marks = breakPoints(section).filter((x) => x >= part.from - SAME_PLACE);
  const pieces = marks.slice(1).map((to, index) => ({ from: marks[index]!, to }));
  const longest = pieces.reduce(
    (best, piece) => (lengthOf(piece) > lengthOf(best) + SAME_PLACE ? piece : best),
    {
      from: part.from,
      to: part.from,
    },
  );
  return lengthOf(longest) < LEAST_SHARE * lengthOf(part) ? part : longest;
}

export const lengthOf = ({ from, to }: Span): number => to - from;

/** The section with a span longer by that much [m]: what lies in it is spread evenly, what lies past it moves along, widths stay. */
export function stretched(section: Section, span: Span, by: number): Section {
  const grown = (lengthOf(span) + by) / lengthOf(span);
  const moved = (x: number): number => {
    if (x <= span.from + SAME_PLACE) return x;
    return x >= span.to - SAME_PLACE ? x + by : span.from + (x - span.from) * grown;
  };
  const along = (point: Point): Point => ({ ...point, x: moved(point.x) });
  return {
    ...section,
    floor: section.floor.map(along),
    roof: section.roof.map(along),
    regions: section.regions.map((region) => ({ ...region, end: moved(region.end) })),
    vents: section.vents.map((vent) => ({ ...vent, place: moved(vent.place) })),
  };
}

/** The least and the greatest height between floor and roof over a span [m]. */
export function heightsOver(section: Section, { from, to }: Span): { least: number; greatest: number } {
  const inside = breakPoints(section).filter((x) => x > from + SAME_PLACE && x < to - SAME_PLACE);
  const heights = [
    heightAt(section, from, 'right'),
    ...inside.flatMap((x) => [heightAt(section, x, 'left'), heightAt(section, x, 'right')]),
    heightAt(section, to, 'left'),
  ];
  return { least: Math.min(...heights), greatest: Math.max(...heights) };
}

/**
 * The section with the roof over that part higher by so much [m], the floor as it is. The part keeps its shape; where the
 * roof runs on beyond it without a step, one comes. Next to the mouth, what reaches back over the basin as far as the rim
 * goes along, so that the way into the die keeps its shape too.
 */
export function raised(section: Section, part: Span, by: number): Section {
  if (isSame(by, 0)) return section;
  const end = part.to;
  const begin = isSame(part.from, section.mouth) ? roofBegin(section) : part.from;
  const isLast = isSame(end, section.roof.at(-1)!.x);
  const stepped = withStep(isLast ? section : withStep(section, end), begin);
  const first = stepped.roof.findLastIndex(({ x }) => isSame(x, begin));
  const last = isLast ? stepped.roof.length - 1 : stepped.roof.findIndex(({ x }) => isSame(x, end));
  const roof = stepped.roof.map((point, index) =>
    index >= first && index <= last ? { ...point, y: point.y + by } : point,
  );
  return { ...stepped, roof };
}

/** Where the roof of the die begins [m]: at the rim of the basin's opening, or at the mouth where none lies before it. */
function roofBegin({ roof, openings, mouth }: Section): number {
  const rims = openings.flatMap((opening) => (opening.wall === 'roof' ? [roof[opening.to]!.x] : []));
  const before = rims.filter((x) => x <= mouth + SAME_PLACE);
  return before.length > 0 ? Math.max(...before) : mouth;
}

/** The section with two corners of its roof at x [m], at one height where there was no step: either side can then move alone. */
function withStep(section: Section, x: number): Section {
  const { roof } = section;
  const here = roof.findLastIndex((point) => isSame(point.x, x));
  if (here > 0 && isSame(roof[here - 1]!.x, x)) return section;
  if (here >= 0) return withCorner(section, 'roof', here, roof[here]!);
  const before = roof.findLastIndex((point) => point.x < x);
  const [a, b] = [roof[before]!, roof[before + 1]!];
  const at = { x, y: a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) };
  return withCorner(withCorner(section, 'roof', before, at), 'roof', before + 1, at);
}
