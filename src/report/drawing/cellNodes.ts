import type { MeshOutline } from '$src/core/pour/record';
import { type EdgeNode, THINNEST } from './edgeNode';

/** Nodes of one mesh cell: its left edge, where the surface meets floor and roof inside, its right edge. */
export function addCell(
  nodes: EdgeNode[],
  outline: MeshOutline,
  inclination: number,
  cell: number,
  levelLeft: number,
  levelRight: number,
): void {
  const x0 = outline.x[cell]!;
  const x1 = outline.x[cell + 1]!;
  const floor0 = outline.floorLeft[cell]!;
  const floor1 = outline.floorRight[cell]!;
  const roof0 = outline.roofLeft[cell]!;
  const roof1 = outline.roofRight[cell]!;
  const sine = Math.sin(inclination);
  const cosine = Math.cos(inclination);
  // How far a point lies above the surface; linear in the place, so its zeros on floor and roof are exact.
  const floorAbove0 = x0 * sine + floor0 * cosine - levelLeft;
  const floorAbove1 = x1 * sine + floor1 * cosine - levelRight;
  const roofAbove0 = x0 * sine + roof0 * cosine - levelLeft;
  const roofAbove1 = x1 * sine + roof1 * cosine - levelRight;
  const onFloor = zeroBetween(floorAbove0, floorAbove1);
  const onRoof = zeroBetween(roofAbove0, roofAbove1);
  const cuts: Cut[] = [
    { s: 0, on: 'edge' },
    ...orderedCuts(onFloor, onRoof, floorAbove0 > 0),
    { s: 1, on: 'edge' },
  ];
  const open = outline.open[cell] === 1;
  let before = cuts[0]!;
  cuts.forEach((cut, i) => {
    const at = (left: number, right: number): number => left + (right - left) * cut.s;
    const halfway = (left: number, right: number): number => left + ((right - left) * (before.s + cut.s)) / 2;
    const floor = at(floor0, floor1);
    const roof = at(roof0, roof1);
    const roofAbove = at(roofAbove0, roofAbove1);
    const kept = between(floor, roof, at(floorAbove0, floorAbove1), roofAbove);
    const top = cut.on === 'edge' ? kept : cut.on === 'floor' ? floor : roof;
    // From floor to roof the surface may stand upright in the die frame: no width, and yet skin.
    const acrossTheGap = before.on !== 'edge' && cut.on !== 'edge';
    const inside = halfway(floorAbove0, floorAbove1) < 0 && (halfway(roofAbove0, roofAbove1) > 0 || open);
    const free = i === 0 ? joinsFreely(nodes, outline, cell, roofAbove > 0 || open) : acrossTheGap || inside;
    nodes.push({ x: at(x0, x1), floor, top, free });
    before = cut;
  });
}

/** Where along a mesh cell, 0 to 1, an edge of the metal has a node, and what it meets there. */
interface Cut {
  readonly s: number;
  readonly on: 'edge' | 'floor' | 'roof';
}

/** The two cuts in the order they must come in, also where rounding would swap them: metal to the right meets the floor first. */
function orderedCuts(onFloor: number, onRoof: number, metalRight: boolean): Cut[] {
  const floor: Cut[] = onFloor >= 0 ? [{ s: onFloor, on: 'floor' }] : [];
  if (onRoof < 0) return floor;
  if (onFloor < 0) return [{ s: onRoof, on: 'roof' }];
  return metalRight
    ? [...floor, { s: Math.max(onFloor, onRoof), on: 'roof' }]
    : [{ s: Math.min(onFloor, onRoof), on: 'roof' }, ...floor];
}

/** The upright piece of edge on the face between two cells is skin unless it runs up the steel of a step in the roof. */
export function joinsFreely(
  nodes: readonly EdgeNode[],
  outline: MeshOutline,
  cell: number,
  freeHere: boolean,
): boolean {
  const before = nodes[nodes.length - 1];
  if (!before) return false;
  const clearOfSteel =
    before.top <= outline.roofLeft[cell]! + THINNEST && before.top >= outline.floorLeft[cell]! - THINNEST;
  return freeHere && clearOfSteel && before.top > before.floor;
}

function zeroBetween(a: number, b: number): number {
  return a < 0 !== b < 0 ? a / (a - b) : -1;
}

/** Height of the surface on the upright from floor to roof, kept between the two. */
function between(floor: number, roof: number, floorAbove: number, roofAbove: number): number {
  if (floorAbove >= 0) return floor;
  if (roofAbove <= 0) return roof;
  return floor + ((roof - floor) * -floorAbove) / (roofAbove - floorAbove);
}
