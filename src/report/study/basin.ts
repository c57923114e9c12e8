import { lineAt, SAME_PLACE } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_PLACE;

/** Length of the basin from its back wall to the mouth [m]. */
export const basinLength = ({ floor, mouth }: Section): number => mouth - floor[0]!.x;

/**
 * The section with its back wall moved, everything from there to the die end left as it is; x is still counted from the
 * back wall. The roof keeps its reach over the basin, which holds the metal of the feeder at the end, so it is the
 * opening that grows or shrinks, once the roof behind it, where there is any, is used up.
 */
export function withBasinLength(section: Section, length: number): Section {
  const backWall = section.floor[0]!.x;
  const by = length - basinLength(section);
  const moved = (point: Point): Point => (isSame(point.x, backWall) ? point : { ...point, x: point.x + by });
  return {
    ...section,
    floor: section.floor.map(moved),
    roof: section.roof.map(moved),
    regions: section.regions.map((region) => ({ ...region, end: region.end + by })),
    mouth: section.mouth + by,
    pivot: { ...section.pivot, x: section.pivot.x + by },
    vents: section.vents.map((vent) => ({ ...vent, place: vent.place + by })),
  };
}

/** Shorter than this an opening takes no ladle: its stream, a thumb wide, with as much room on either side [m]. Common practice, no source. */
export const LEAST_OPENING = 0.025;

/** The opening that a moved back wall makes shorter or longer: its length [m], and the roof point that is its rim towards the mouth. */
export interface WallOpening {
  readonly length: number;
  readonly rim: number;
}

/** Null where roof or wall stands between back wall and opening, or where the ladle has another way in. */
function openingAtWall({ floor, roof, openings }: Section): WallOpening | null {
  const wall = floor[0]!.x;
  const spans = openings.flatMap((opening) =>
    opening.wall === 'roof'
      ? [
          {
            rim: opening.to,
            from: roof[opening.from]!.x,
            length: roof[opening.to]!.x - roof[opening.from]!.x,
          },
        ]
      : [],
  );
  const own = spans.find(({ from }) => isSame(from, wall));
  if (!own || spans.length < openings.length) return null;
  const hasOther = spans.some((span) => span !== own && span.length >= LEAST_OPENING);
  return hasOther ? null : own;
}

/** Shortest basin that can still be ladled into, and the opening that says so; an opening that is shorter already stays as short as it is. */
export function shortestToLadle(
  section: Section,
): { readonly length: number; readonly opening: WallOpening } | null {
  const opening = openingAtWall(section);
  if (!opening) return null;
  const spare = Math.max(0, opening.length - LEAST_OPENING);
  return { length: basinLength(section) - spare, opening };
}

const lipOf = ({ floor, mouth }: Section): number => lineAt(floor, mouth, 'right');
const isBehind = (section: Section) => (point: Point) => point.x < section.mouth - SAME_PLACE;
const lowest = (section: Section): number =>
  Math.min(...section.floor.filter(isBehind(section)).map(({ y }) => y));

/** How far the lowest floor of the basin lies under the die floor at the mouth [m]; 0 is flush, negative is above it. */
export const basinDepth = (section: Section): number => lipOf(section) - lowest(section);

/** The section with the lowest floor of its basin put at that depth under the mouth; a step at the mouth comes or goes with it. */
export function withBasinDepth(section: Section, depth: number): Section {
  const { floor, mouth } = section;
  const [from, to] = [lowest(section), lipOf(section) - depth];
  const lowered = (y: number): number => (isSame(y, from) ? to : y);
  const behind = floor.filter(isBehind(section)).map(({ x, y }) => ({ x, y: lowered(y) }));
  const foot = { x: mouth, y: lowered(lineAt(floor, mouth, 'left')) };
  const lip = { x: mouth, y: lipOf(section) };
  const beyond = floor.filter(({ x }) => x > mouth + SAME_PLACE);
  const step = isSame(foot.y, lip.y) ? [lip] : [foot, lip];
  return { ...section, floor: withoutMiddles([...behind, ...step, ...beyond]) };
}

/** Points on a straight line between their neighbours go: a flush floor is one line. */
function withoutMiddles(line: readonly Point[]): Point[] {
  return line.filter((point, index) => {
    const [before, after] = [line[index - 1], line[index + 1]];
    if (!before || !after || isSame(before.x, point.x) || isSame(point.x, after.x)) return true;
    const between = before.y + ((after.y - before.y) * (point.x - before.x)) / (after.x - before.x);
    return !isSame(between, point.y);
  });
}
