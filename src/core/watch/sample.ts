import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';

/** How often the watchers look [s]. */
export const SAMPLE_TIME = 2e-3;
/** Spacing of the places the watchers read [m]: windows are in millimetres, never in mesh cells. */
export const PLACE_STEP = 5e-3;

/**
 * The metal in the die read at fixed places along the floor path, so that what is watched does not change with
 * the mesh. Place k lies k × spacing from the mouth; the last place is at most a spacing short of the die end.
 */
export interface Profile {
  readonly places: number;
  readonly spacing: number;
  /** Depth square to the floor [m], speed along the floor [m/s], by place. */
  readonly depth: Float64Array;
  readonly speed: Float64Array;
  /** Free height between floor and roof, square to the floor [m]. */
  readonly opening: Float64Array;
  /** The mesh cell whose centre lies before the place, and the share of the way to the next one's. */
  readonly cellBefore: Int32Array;
  readonly shareOfNext: Float64Array;
  /** 1 where the metal touches the roof. */
  readonly roofed: Uint8Array;
}

/** One look at the pour. `profile` and arrays in `flow` are reused: copy what must be kept. */
export interface Sample {
  readonly time: number;
  /** Time since the look before [s]; 0 at the first. */
  readonly elapsed: number;
  readonly inclination: number;
  readonly flow: Flow;
  readonly mesh: Mesh;
  readonly profile: Profile;
  /** Foremost metal in the die: along the floor path from the mouth [m] and along the axis [m]; negative in the basin. */
  readonly front: number;
  readonly frontAlongAxis: number;
  /** Length of the die floor path [m]. */
  readonly dieLength: number;
}

/** Speed of the metal in a mesh cell [m/s]: of its two faces, weighted by what passes. */
export function cellSpeed(flow: Flow, i: number): number {
  const left = Math.abs(flow.flux[i]!);
  const right = Math.abs(flow.flux[i + 1]!);
  const total = left + right;
  return total > 0 ? (left * flow.speed[i]! + right * flow.speed[i + 1]!) / total : 0;
}

/** Depth that counts as metal for the front [m]; thinner is film. */
export const FRONT_DEPTH = 1e-3;

/** Foremost metal: last cell deeper than 1 mm, and in it the share that its depth has of its neighbour's. */
export function findFront(flow: Flow, mesh: Mesh): { path: number; axis: number } {
  const { depth } = flow;
  for (let i = mesh.cells - 1; i >= 0; i--) {
    const here = depth[i]!;
    if (here <= FRONT_DEPTH) continue;
    const behind = i > 0 ? depth[i - 1]! : here;
    const share = here >= behind ? 1 : here / behind;
    const start = mesh.facePlace[i]!;
    const mouth = mesh.x[mesh.mouthFace]!;
    return {
      path: start + share * (mesh.facePlace[i + 1]! - start),
      axis: mesh.x[i]! + share * (mesh.x[i + 1]! - mesh.x[i]!) - mouth,
    };
  }
  return { path: mesh.facePlace[0]!, axis: mesh.x[0]! - mesh.x[mesh.mouthFace]! };
}

export function makeProfile(mesh: Mesh): Profile {
  const places = Math.floor(mesh.facePlace[mesh.cells]! / PLACE_STEP + 1e-9) + 1;
  return {
    places,
    spacing: PLACE_STEP,
    depth: new Float64Array(places),
    speed: new Float64Array(places),
    opening: openings(mesh, places),
    ...placing(mesh, places),
    roofed: new Uint8Array(places),
  };
}

function openings(mesh: Mesh, places: number): Float64Array {
  const opening = new Float64Array(places);
  let i = mesh.mouthFace;
  for (let k = 0; k < places; k++) {
    while (i < mesh.cells - 1 && mesh.facePlace[i + 1]! < k * PLACE_STEP) i++;
    const height = (mesh.roofLeft[i]! + mesh.roofRight[i]! - mesh.floorLeft[i]! - mesh.floorRight[i]!) / 2;
    opening[k] = height * mesh.floorCos[i]!;
  }
  return opening;
}

/** Reads depth and speed at the fixed places by linear interpolation between mesh cell centres. */
export function readProfile(profile: Profile, flow: Flow, mesh: Mesh): void {
  const { depth, speed, roofed, cellBefore, shareOfNext, places } = profile;
  const { floorCos } = mesh;
  const last = mesh.cells - 1;
  for (let k = 0; k < places; k++) {
    const i = cellBefore[k]!;
    const next = i < last ? i + 1 : last;
    const share = shareOfNext[k]!;
    const here = flow.depth[i]! * floorCos[i]!;
    const there = flow.depth[next]! * floorCos[next]!;
    depth[k] = here + share * (there - here);
    roofed[k] = flow.full[share > 0.5 ? next : i]!;
    if (here > 0 || there > 0) {
      const u = cellSpeed(flow, i);
      speed[k] = u + share * (cellSpeed(flow, next) - u);
    } else speed[k] = 0;
  }
}

/** Where each place lies between the centres of the mesh cells. */
function placing(mesh: Mesh, places: number): { cellBefore: Int32Array; shareOfNext: Float64Array } {
  const cellBefore = new Int32Array(places);
  const shareOfNext = new Float64Array(places);
  const last = mesh.cells - 1;
  let i = Math.max(mesh.mouthFace - 1, 0);
  for (let k = 0; k < places; k++) {
    while (i < last && centrePlace(mesh, i + 1) < k * PLACE_STEP) i++;
    const from = centrePlace(mesh, i);
    const length = centrePlace(mesh, Math.min(i + 1, last)) - from;
    cellBefore[k] = i;
    shareOfNext[k] = length > 0 ? Math.min(1, Math.max(0, (k * PLACE_STEP - from) / length)) : 0;
  }
  return { cellBefore, shareOfNext };
}

function centrePlace(mesh: Mesh, i: number): number {
  return (mesh.facePlace[i]! + mesh.facePlace[i + 1]!) / 2;
}
