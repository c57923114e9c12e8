import type { MeshOutline } from '$src/core/pour/record';
import { joinsFreely } from './cellNodes';
import { type EdgeNode, THINNEST } from './edgeNode';

/** What a frame says of its metal. */
export interface FrameMetal {
  /** Lab elevation of the surface in a mesh cell [m], NaN where dry or not worth drawing. */
  levelOf(cell: number): number;
  /** Mean depth square to the axis in a mesh cell [m]; asked only where there is a level. */
  depthOf(cell: number): number;
}

/**
 * Whether the metal of a mesh cell runs down a floor too steep for it to lie level: it does not cover the cell's floor,
 * and nothing at the cell's lower end holds it up. The level of such metal tells how much there is, not where it is:
 * drawn as a level, a film of a millimetre on an upright wall is a bar from wall to wall.
 */
export function runsAsFilm(
  outline: MeshOutline,
  inclination: number,
  { levelOf }: FrameMetal,
  cell: number,
): boolean {
  const cells = outline.x.length - 1;
  if (cell < 0 || cell >= cells) return false;
  const own = levelOf(cell);
  if (Number.isNaN(own)) return false;
  const sine = Math.sin(inclination);
  const cosine = Math.cos(inclination);
  const atLeft = outline.x[cell]! * sine + outline.floorLeft[cell]! * cosine;
  const atRight = outline.x[cell + 1]! * sine + outline.floorRight[cell]! * cosine;
  if (own > Math.max(atLeft, atRight)) return false;
  const fallsRight = atRight < atLeft;
  const below = fallsRight ? cell + 1 : cell - 1;
  if (below < 0 || below >= cells) return false;
  const face = outline.x[fallsRight ? cell + 1 : cell]!;
  const sill = (fallsRight ? outline.floorLeft : outline.floorRight)[below]!;
  if (face * sine + sill * cosine >= own) return false;
  const other = levelOf(below);
  return Number.isNaN(other) || other <= Math.min(atLeft, atRight);
}

/** Nodes of a mesh cell whose metal lies along its floor; films side by side meet half way. */
export function addFilmCell(
  nodes: EdgeNode[],
  outline: MeshOutline,
  { depthOf }: FrameMetal,
  cell: number,
  isFilm: (cell: number) => boolean,
): void {
  const own = depthOf(cell);
  const towards = (neighbour: number) => (isFilm(neighbour) ? (own + depthOf(neighbour)) / 2 : own);
  const node = (x: number, floor: number, roof: number, depth: number) => ({
    x,
    floor,
    top: Math.min(floor + depth, roof),
    isFree: floor + depth < roof - THINNEST,
  });
  const { x, floorLeft, floorRight, roofLeft, roofRight } = outline;
  const left = node(x[cell]!, floorLeft[cell]!, roofLeft[cell]!, towards(cell - 1));
  const right = node(x[cell + 1]!, floorRight[cell]!, roofRight[cell]!, towards(cell + 1));
  nodes.push({ ...left, free: joinsFreely(nodes, outline, cell, left.isFree) });
  nodes.push({ ...right, free: left.isFree || right.isFree });
}
