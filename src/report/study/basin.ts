import { lineAt, SAME_PLACE } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_PLACE;

/** Length of the basin from its back wall to the mouth [m]. */
export const basinLength = ({ floor, mouth }: Section): number => mouth - floor[0]!.x;

/** The section with its back wall moved, everything from there to the die end left as it is; x is still counted from the back wall. */
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
