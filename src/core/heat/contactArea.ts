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
  /** 1 where there is any such upright wall. */
  readonly upright: Uint8Array;
  /** Side walls, two for each cavity, touch the metal's whole section: their area for each volume of metal [1/m]. */
  readonly sidesPerVolume: Float64Array;
}

/**
 * @param cavities equal cavities side by side past the mouth: each has two side walls
 */
export function wallsOf(mesh: Mesh, cavities: number): Walls {
  const { cells, x, width, widthLeft, widthRight, path, open, mouthFace } = mesh;
  const cell = (value: (i: number) => number) => Float64Array.from({ length: cells }, (_, i) => value(i));
  const roofPath = (i: number) => Math.hypot(x[i + 1]! - x[i]!, mesh.roofRight[i]! - mesh.roofLeft[i]!);
  const across = cell((i) => (widthLeft[i]! + widthRight[i]!) / 2);
  const cavitiesAt = (i: number) => (i >= mouthFace ? cavities : 1);
  /** Of a side wall over its shadow on the section: where the width tapers, each leans by half of it. */
  const slant = (i: number) => {
    const taper = (widthRight[i]! - widthLeft[i]!) / (cavitiesAt(i) * (x[i + 1]! - x[i]!));
    return Math.sqrt(1 + (taper / 2) ** 2);
  };
  const foot = cell((i) => footHeight(mesh, i));
  const hanging = cell((i) => hangingHeight(mesh, i));
  return {
    floor: cell((i) => path[i]! * across[i]!),
    roof: cell((i) => (open[i] ? 0 : roofPath(i) * across[i]!)),
    foot,
    hanging,
    free: cell((i) => Math.max(0, Math.min(ceilingOver(mesh, i, i), ceilingOver(mesh, i, i + 1)))),
    upright: Uint8Array.from(foot, (height, i) => (height > 0 || hanging[i]! > 0 ? 1 : 0)),
    sidesPerVolume: cell((i) => (2 * cavitiesAt(i) * slant(i)) / width[i]!),
  };
}

/** All that the metal of a full mesh cell touches [m²]: floor, roof, upright walls and the sides of every cavity. */
export function wholeContact(walls: Walls, mesh: Mesh, i: number): number {
  const { floor, roof, foot, hanging, sidesPerVolume } = walls;
  const upright = (foot[i]! + hanging[i]!) * mesh.width[i]!;
  return floor[i]! + roof[i]! + upright + sidesPerVolume[i]! * mesh.volume[i]!;
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

/** A cell this close to its volume touches all of its walls (relative). */
const NEARLY_FULL = 1 - 1e-9;

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
  let floor = wetted;
  let roof = wetted;
  if (volume < mesh.volume[i]! * NEARLY_FULL) {
    const { sin, cos } = turn;
    const left = mesh.x[i]! * sin;
    const right = mesh.x[i + 1]! * sin;
    const under = shareUnder(level, left + mesh.floorLeft[i]! * cos, right + mesh.floorRight[i]! * cos);
    if (under < floor) floor = under;
    const over = shareUnder(level, left + mesh.roofLeft[i]! * cos, right + mesh.roofRight[i]! * cos);
    if (over < roof) roof = over;
  }
  const flat = walls.floor[i]! * floor + walls.roof[i]! * roof + walls.sidesPerVolume[i]! * volume;
  return walls.upright[i] ? flat + uprightArea(walls, mesh, i, volume) : flat;
}

/** Steps and end walls up to the metal's depth, and roof faces that hang into it [m²]. */
function uprightArea(walls: Walls, mesh: Mesh, i: number, volume: number): number {
  const width = mesh.width[i]!;
  const depth = volume / (width * (mesh.x[i + 1]! - mesh.x[i]!));
  const over = depth - walls.free[i]!;
  const hanging = over > 0 ? Math.min(over, walls.hanging[i]!) : 0;
  return (Math.min(depth, walls.foot[i]!) + hanging) * width;
}
