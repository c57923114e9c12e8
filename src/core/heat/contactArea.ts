import type { Mesh } from '$src/core/mesh/mesh';

/** What of a mesh cell's walls metal can touch; fixed once, all cavities together. */
export interface Walls {
  /** Area of floor and of roof [m²]; no roof under an opening. */
  readonly floor: Float64Array;
  readonly roof: Float64Array;
  /** Upright walls at the cell's two faces, at the foot (steps in the floor, end walls) and hanging from the roof [m]: height. */
  readonly foot: Float64Array;
  readonly hanging: Float64Array;
  /** Free height over which a hanging wall begins [m]: the lower of the two faces. */
  readonly free: Float64Array;
  /** Side walls of a cell: 2 for each cavity; each touches the metal's whole section. */
  readonly sides: Float64Array;
}

/**
 * @param cavities equal cavities side by side past the mouth: each has two side walls
 */
export function wallsOf(mesh: Mesh, cavities: number): Walls {
  const { cells, x, width, path, open, mouthFace } = mesh;
  const cell = (value: (i: number) => number) => Float64Array.from({ length: cells }, (_, i) => value(i));
  const roofPath = (i: number) => Math.hypot(x[i + 1]! - x[i]!, mesh.roofRight[i]! - mesh.roofLeft[i]!);
  return {
    floor: cell((i) => path[i]! * width[i]!),
    roof: cell((i) => (open[i] ? 0 : roofPath(i) * width[i]!)),
    foot: cell((i) => footHeight(mesh, i)),
    hanging: cell((i) => hangingHeight(mesh, i)),
    free: cell((i) => Math.max(0, Math.min(ceilingOver(mesh, i, i), ceilingOver(mesh, i, i + 1)))),
    sides: cell((i) => 2 * (i >= mouthFace ? cavities : 1)),
  };
}

function floorAt(mesh: Mesh, cell: number, face: number): number {
  return face === cell ? mesh.floorLeft[cell]! : mesh.floorRight[cell]!;
}

function roofAt(mesh: Mesh, cell: number, face: number): number {
  return face === cell ? mesh.roofLeft[cell]! : mesh.roofRight[cell]!;
}

function ceilingOver(mesh: Mesh, cell: number, face: number): number {
  return mesh.ceiling[face]! - floorAt(mesh, cell, face);
}

/** Steps in the floor at both faces; at the section's ends the whole wall, unless metal can leave there. */
function footHeight(mesh: Mesh, i: number): number {
  const left = i === 0 ? endWall(mesh, 0, 0) : mesh.sill[i]! - floorAt(mesh, i, i);
  const right = i === mesh.cells - 1 ? endWall(mesh, i, i + 1) : mesh.sill[i + 1]! - floorAt(mesh, i, i + 1);
  return Math.max(0, left) + Math.max(0, right);
}

function endWall(mesh: Mesh, cell: number, face: number): number {
  const foot = floorAt(mesh, cell, face);
  const isOpen = mesh.rims.some(
    (rim) => rim.cell === cell && rim.x === mesh.x[face]! && Math.abs(rim.y - foot) < 1e-9,
  );
  if (isOpen) return 0;
  return mesh.open[cell] ? openWall(mesh, foot) : roofAt(mesh, cell, face) - foot;
}

/** The back wall of an open basin ends at its rim, not at the virtual roof. */
function openWall(mesh: Mesh, foot: number): number {
  const rims = mesh.rims.map((rim) => rim.y);
  return rims.length > 0 ? Math.max(0, Math.max(...rims) - foot) : 0;
}

function hangingHeight(mesh: Mesh, i: number): number {
  let height = 0;
  for (const face of [i, i + 1]) {
    if (face === 0 || face === mesh.cells) continue;
    height += Math.max(0, roofAt(mesh, i, face) - mesh.ceiling[face]!);
  }
  return height;
}

/** Share of a straight line between two elevations that lies under a level, 0 to 1. */
function shareUnder(level: number, a: number, b: number): number {
  const low = a < b ? a : b;
  const high = a < b ? b : a;
  if (level >= high) return 1;
  return level <= low ? 0 : (level - low) / (high - low);
}

/** Turn of the body: sine and cosine of the inclination. */
export interface Turn {
  readonly sin: number;
  readonly cos: number;
}

/**
 * Area of die that the metal in cell i touches [m²]: floor and roof where they lie under its level, upright walls up to
 * its depth, both sides of every cavity over its section.
 *
 * @param wetted share of the cell's length that holds metal, below 1 only in the cell of a blunt front
 */
export function contactArea(
  walls: Walls,
  mesh: Mesh,
  i: number,
  volume: number,
  level: number,
  turn: Turn,
  wetted: number,
): number {
  const { sin, cos } = turn;
  const left = mesh.x[i]! * sin;
  const right = mesh.x[i + 1]! * sin;
  const isFull = volume >= mesh.volume[i]! * NEARLY_FULL;
  const floor = isFull
    ? 1
    : shareUnder(level, left + mesh.floorLeft[i]! * cos, right + mesh.floorRight[i]! * cos);
  const roof = isFull
    ? 1
    : shareUnder(level, left + mesh.roofLeft[i]! * cos, right + mesh.roofRight[i]! * cos);
  const width = mesh.width[i]!;
  const section = volume / width;
  const depth = section / (mesh.x[i + 1]! - mesh.x[i]!);
  const foot = walls.foot[i]!;
  const upright = (depth < foot ? depth : foot) + hangingUnder(walls, i, depth);
  return (
    walls.floor[i]! * (floor < wetted ? floor : wetted) +
    walls.roof[i]! * (roof < wetted ? roof : wetted) +
    upright * width +
    walls.sides[i]! * section
  );
}

const NEARLY_FULL = 1 - 1e-9;

function hangingUnder(walls: Walls, i: number, depth: number): number {
  const over = depth - walls.free[i]!;
  if (over <= 0) return 0;
  const hanging = walls.hanging[i]!;
  return over < hanging ? over : hanging;
}
