import { lineAt } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';

/** The steel around a section, derived from its outline alone; all in the die frame [m]. Thicknesses are for the eye. */
export interface Steel {
  readonly floorBlock: readonly Point[];
  /** One for each stretch of roof between openings. */
  readonly roofBlocks: readonly (readonly Point[])[];
  /** Wall of the basin that touches metal, from the rim of the back wall to the mouth; the shell lies outside it. */
  readonly shellWall: readonly Point[];
  readonly shellThickness: number;
  /** The shell as a polygon, for bounds and for keeping labels off it. */
  readonly shell: readonly Point[];
  /** Floor and roof closed into one outline: all the room there is for metal. */
  readonly cavity: readonly Point[];
  readonly rims: readonly Point[];
  /** Corners of everything, for bounds. */
  readonly corners: readonly Point[];
}

const BLOCK_SHARE = 0.1;
/** Steel this thick, against a full block, is enough over the roof for a block to end level with its rim. */
const ENOUGH_SHARE = 0.5;
const SHELL_SHARE = 0.022;
const SHELL_MIN = 0.005;
const SHELL_MAX = 0.012;

/** Steel around a section. The section must have at least two points in each line. */
export function steelAround(section: Section): Steel {
  const first = section.floor[0]!;
  const last = section.floor[section.floor.length - 1]!;
  const length = last.x - first.x;
  const block = BLOCK_SHARE * length;
  const thickness = Math.min(SHELL_MAX, Math.max(SHELL_MIN, SHELL_SHARE * length));
  const { basin, die } = splitAtMouth(section);
  const shellWall = hasBackWall(section) ? [section.roof[0]!, ...basin] : basin;
  const shell = [...shellWall, ...offsetOutward(shellWall, thickness).reverse()];
  const floorBlock = floorBlockOf(section, die, block, thickness);
  const roofBlocks = roofStretches(section).map(([from, to]) =>
    roofBlockOf(section, from, to, block, thickness),
  );
  return {
    floorBlock,
    roofBlocks,
    shellWall,
    shellThickness: thickness,
    shell,
    cavity: [...section.floor, ...[...section.roof].reverse()],
    rims: rimsOf(section),
    corners: [...floorBlock, ...roofBlocks.flat(), ...shell],
  };
}

const hasBackWall = (section: Section): boolean => !section.openings.some((o) => o.wall === 'back wall');

/** Floor left of the mouth and floor right of it; a vertical step at the mouth belongs to the die. */
export function splitAtMouth(section: Section): { basin: Point[]; die: Point[] } {
  const { floor, mouth } = section;
  const at = floor.findIndex((p) => p.x >= mouth);
  if (at < 0) return { basin: [...floor], die: [floor[floor.length - 1]!] };
  const joint =
    floor[at]!.x === mouth || at === 0 ? floor[at]! : { x: mouth, y: lineAt(floor, mouth, 'right') };
  const die = floor[at]! === joint ? floor.slice(at) : [joint, ...floor.slice(at)];
  return { basin: [...floor.slice(0, at), joint], die };
}

/** Stretches of roof that are steel, as pairs of point indices. */
export function roofStretches(section: Section): [number, number][] {
  const last = section.roof.length - 1;
  const open = section.openings
    .flatMap((o) => (o.wall === 'roof' ? [o] : []))
    .sort((a, b) => a.from - b.from);
  const stretches: [number, number][] = [];
  let from = 0;
  for (const opening of open) {
    if (opening.from > from) stretches.push([from, Math.min(opening.from, last)]);
    from = Math.max(from, opening.to);
  }
  if (from < last) stretches.push([from, last]);
  return stretches;
}

function rimsOf(section: Section): Point[] {
  const { floor, roof, openings } = section;
  return openings
    .flatMap((o) => (o.wall === 'roof' ? [roof[o.from], roof[o.to]] : [floor[0], roof[0]]))
    .filter((p): p is Point => p !== undefined);
}

/** Half height of the end gap: where the two halves of the die part. */
function parting(section: Section): number {
  return (section.floor[section.floor.length - 1]!.y + section.roof[section.roof.length - 1]!.y) / 2;
}

function floorBlockOf(section: Section, die: readonly Point[], block: number, shell: number): Point[] {
  const end = die[die.length - 1]!;
  const joint = die[0]!;
  const past = die.filter((p) => p.x > joint.x);
  const bottom = Math.min(joint.y - shell * 1.4, ...past.map((p) => p.y - block));
  const split = parting(section);
  const outside = end.x + block * 0.8;
  return [
    ...die,
    { x: end.x, y: split },
    { x: outside, y: split },
    { x: outside, y: bottom },
    { x: die[0]!.x, y: bottom },
  ];
}

function roofBlockOf(section: Section, from: number, to: number, block: number, wall: number): Point[] {
  const line = section.roof.slice(from, to + 1);
  const first = line[0]!;
  const last = line[line.length - 1]!;
  const closedLeft = from === 0;
  const closedRight = to === section.roof.length - 1;
  const inner = line.filter((_, i) => !isFaceTop(line, i, closedLeft, closedRight));
  const roof = Math.max(...inner.map((p) => p.y));
  const rim = Math.max(closedLeft ? -Infinity : first.y, closedRight ? -Infinity : last.y);
  const top = rim >= roof + ENOUGH_SHARE * block ? rim : Math.max(roof + block, rim);
  const left = closedLeft
    ? [
        { x: first.x - wall, y: top },
        { x: first.x - wall, y: first.y },
      ]
    : [shoulder(first, last.x, top)];
  const right = closedRight ? endWall(section, last, block, top) : [shoulder(last, first.x, top)];
  return [...line, ...right, ...left];
}

/** The rim on top of a vertical face says where the face ends, not how low the roof is. */
function isFaceTop(line: readonly Point[], i: number, closedLeft: boolean, closedRight: boolean): boolean {
  if (line.length < 3) return false;
  if (i === 0 && !closedLeft) return line[1]!.x === line[0]!.x;
  if (i === line.length - 1 && !closedRight) return line[i - 1]!.x === line[i]!.x;
  return false;
}

function endWall(section: Section, last: Point, block: number, top: number): Point[] {
  const split = parting(section);
  const outside = last.x + block * 0.8;
  return [
    { x: last.x, y: split },
    { x: outside, y: split },
    { x: outside, y: top },
  ];
}

/** From a rim up to the top of its block: the steel leans away so that the rim stays the edge metal runs over. */
function shoulder(rim: Point, towards: number, top: number): Point {
  const lean = Math.min((top - rim.y) * 0.6, Math.abs(towards - rim.x) * 0.45);
  return { x: rim.x + Math.sign(towards - rim.x) * lean, y: top };
}

/** A line moved outward (to its right when walked down the back wall and along the floor), corners mitred. */
function offsetOutward(line: readonly Point[], distance: number): Point[] {
  return line.map((p, i) => {
    const before = i > 0 ? outwardOf(line[i - 1]!, p) : null;
    const after = i < line.length - 1 ? outwardOf(p, line[i + 1]!) : null;
    const a = before ?? after ?? { x: 0, y: -1 };
    const b = after ?? a;
    const shrink = Math.max(0.5, 1 + a.x * b.x + a.y * b.y);
    return { x: p.x + ((a.x + b.x) * distance) / shrink, y: p.y + ((a.y + b.y) * distance) / shrink };
  });
}

function outwardOf(a: Point, b: Point): Point | null {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return length === 0 ? null : { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
}
