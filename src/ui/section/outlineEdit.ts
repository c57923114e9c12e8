import type { Opening, Point, Region, Section } from '$src/core/section/section';
import { widthInRegion } from '$src/core/section/widthAt';

/** The two lines of a section's outline. */
export type LineName = 'floor' | 'roof';

/** One corner of the outline: its line and its number in it. */
export interface Corner {
  readonly line: LineName;
  readonly index: number;
}

const SAME = 1e-9;
/** Least distance a dragged corner keeps from the other line [m]. */
const LEAST_GAP = 0.001;

/** Rounds to a grid [m], and away the dust of floating point. */
export const snapTo = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toFixed(9));

/** Moves a corner to a point as given. The corners at the die end keep one x, and the last region ends there. */
export function movedTo(section: Section, { line, index }: Corner, to: Point): Section {
  const points = section[line];
  const isEnd = index === points.length - 1;
  const moved = { ...section, [line]: points.map((p, i) => (i === index ? to : p)) };
  return isEnd && to.x !== points[index]?.x ? withEnd(moved, to.x) : moved;
}

/** Ends floor, roof and last region at x [m]; vents nearer to the die end than to what comes before it keep their distance from it. */
function withEnd(section: Section, x: number): Section {
  const ended = (points: readonly Point[]) =>
    points.map((p, i) => (i === points.length - 1 ? { ...p, x } : p));
  const regions = section.regions.map((r, i) => (i === section.regions.length - 1 ? { ...r, end: x } : r));
  const before = section.regions.at(-1)?.end ?? x;
  const last = Math.max(section.mouth, section.floor.at(-2)!.x, section.roof.at(-2)!.x);
  const vents = section.vents.map((v) =>
    v.place > (last + before) / 2 ? { ...v, place: Math.max(section.mouth, v.place + x - before) } : v,
  );
  return { ...section, floor: ended(section.floor), roof: ended(section.roof), regions, vents };
}

/**
 * Where a dragged corner may go: between its neighbours along the axis, never through the other line. The back wall
 * stays where it is; the die end keeps clear of the mouth and of the corners before it on both lines.
 */
export function keptInBounds(section: Section, { line, index }: Corner, to: Point): Point {
  const points = section[line];
  const other = section[line === 'floor' ? 'roof' : 'floor'];
  const last = points.length - 1;
  if (index === 0) return { x: points[0]!.x, y: clearOf(line, other, points[0]!.x, to.y) };
  const low = Math.max(
    points[index - 1]!.x,
    index === last ? Math.max(other[other.length - 2]!.x, section.mouth) + LEAST_GAP : 0,
  );
  const high = index === last ? Infinity : points[index + 1]!.x;
  const x = Math.min(high, Math.max(low, to.x));
  return { x, y: clearOf(line, other, x, to.y) };
}

/** Keeps y on its side of the other line at x; at a step of that line, of both its ends. */
function clearOf(line: LineName, other: readonly Point[], x: number, y: number): number {
  const heights = heightsAt(other, x);
  if (heights.length === 0) return y;
  return line === 'floor'
    ? Math.min(y, Math.min(...heights) - LEAST_GAP)
    : Math.max(y, Math.max(...heights) + LEAST_GAP);
}

function heightsAt(points: readonly Point[], x: number): number[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i]!;
    if (x < a.x - SAME || x > b.x + SAME) return [];
    return b.x - a.x < SAME ? [a.y, b.y] : [a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)];
  });
}

/** Adds a corner on the piece of line that begins at `after`; openings keep the pieces they have. */
export function withCorner(section: Section, line: LineName, after: number, at: Point): Section {
  const points = [...section[line].slice(0, after + 1), at, ...section[line].slice(after + 1)];
  if (line === 'floor') return { ...section, floor: points };
  const moved = (index: number) => (index > after ? index + 1 : index);
  const openings = section.openings.map((o) =>
    o.wall === 'roof' ? { ...o, from: moved(o.from), to: moved(o.to) } : o,
  );
  return { ...section, roof: points, openings };
}

export const canRemove = (section: Section, { line, index }: Corner): boolean =>
  index > 0 && index < section[line].length - 1 && section[line].length > 2;

/** Takes a corner out; an opening whose rim it was reaches to the next corner. */
export function withoutCorner(section: Section, { line, index }: Corner): Section {
  const points = section[line].filter((_, i) => i !== index);
  if (line === 'floor') return { ...section, floor: points };
  const openings = section.openings.map((o) =>
    o.wall === 'roof'
      ? { ...o, from: o.from >= index ? o.from - 1 : o.from, to: o.to > index ? o.to - 1 : o.to }
      : o,
  );
  return { ...section, roof: points, openings };
}

/** Whether the piece of roof that begins at a corner is open. */
export const isOpen = (section: Section, from: number): boolean =>
  section.openings.some((o) => o.wall === 'roof' && o.from <= from && from < o.to);

export const isBackOpen = (section: Section): boolean => section.openings.some((o) => o.wall === 'back wall');

/** Opens or closes one piece of roof; neighbouring open pieces are one opening. */
export function withRoofPiece(section: Section, from: number, open: boolean): Section {
  const pieces = section.roof.slice(1).map((_, i) => (i === from ? open : isOpen(section, i)));
  const openings: Opening[] = section.openings.filter((o) => o.wall === 'back wall');
  pieces.forEach((isPieceOpen, i) => {
    if (!isPieceOpen) return;
    const before = openings[openings.length - 1];
    if (before?.wall === 'roof' && before.to === i) openings[openings.length - 1] = { ...before, to: i + 1 };
    else openings.push({ wall: 'roof', from: i, to: i + 1 });
  });
  return { ...section, openings };
}

export function withBackWall(section: Section, open: boolean): Section {
  const roofs = section.openings.filter((o) => o.wall === 'roof');
  return { ...section, openings: open ? [{ wall: 'back wall' }, ...roofs] : roofs };
}

/** Moves the mouth; a region that ended at it still does. */
export function withMouth(section: Section, mouth: number): Section {
  const regions = section.regions.map((r, i) =>
    i < section.regions.length - 1 && Math.abs(r.end - section.mouth) < SAME ? { ...r, end: mouth } : r,
  );
  return { ...section, mouth, regions };
}

/** A mouth that leaves some basin and some die, and passes no other region's end [m]. */
export function keptMouth(section: Section, mouth: number): number {
  const start = section.floor[0]!.x;
  const end = section.floor[section.floor.length - 1]!.x;
  const tied = section.regions.findIndex((r) => Math.abs(r.end - section.mouth) < SAME);
  const low = tied > 0 ? section.regions[tied - 1]!.end : start;
  const high = tied >= 0 && tied < section.regions.length - 1 ? section.regions[tied + 1]!.end : end;
  return Math.min(high - LEAST_GAP, Math.max(low + LEAST_GAP, mouth));
}

/** Gives a region a taper to a width where it ends [m], or one width throughout (null). */
export function withWidthAtEnd(section: Section, index: number, widthAtEnd: number | null): Section {
  const tapered = ({ widthAtEnd: _, ...region }: Region): Region =>
    widthAtEnd === null ? region : { ...region, widthAtEnd };
  return { ...section, regions: section.regions.map((r, i) => (i === index ? tapered(r) : r)) };
}

/** Splits a region in two at its middle; a taper runs on through both. */
export function withRegionSplit(section: Section, index: number, name: string): Section {
  const region = section.regions[index]!;
  const begin = index === 0 ? section.floor[0]!.x : section.regions[index - 1]!.end;
  const middle = snapTo((begin + region.end) / 2, LEAST_GAP);
  const width = widthInRegion(section, index, middle);
  const first =
    region.widthAtEnd === undefined
      ? { ...region, end: middle }
      : { ...region, end: middle, widthAtEnd: width };
  const second = { ...region, name, width };
  return { ...section, regions: section.regions.flatMap((r, i) => (i === index ? [first, second] : [r])) };
}

/** Takes a region out; the one before it (or after, for the first) takes its stretch. */
export function withoutRegion(section: Section, index: number): Section {
  const removed = section.regions[index]!;
  const rest = section.regions.filter((_, i) => i !== index);
  const isLast = index === section.regions.length - 1;
  const regions = rest.map((r, i) => (isLast && i === rest.length - 1 ? { ...r, end: removed.end } : r));
  return {
    ...section,
    regions:
      index === 0 || isLast
        ? regions
        : regions.map((r, i) => (i === index - 1 ? { ...r, end: removed.end } : r)),
  };
}
