import { type Levels, makeLevels } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';

import type { Gas } from './gas';

/**
 * The state of the metal and the scratch of a step, all allocated once. Cell arrays have `cells` entries,
 * face arrays `cells + 1`; faces 0 and `cells` are the end walls.
 */
export interface Flow {
  readonly levels: Levels;
  /** Metal in the cell [m³]. */
  readonly volume: Float64Array;
  /** Lab elevation of the free surface, or piezometric head of a full cell [m]. */
  readonly level: Float64Array;
  /** Depth, normal to the axis, mean of the cell [m], and its limited difference across the cell [m]. */
  readonly depth: Float64Array;
  readonly depthSlope: Float64Array;
  readonly full: Uint8Array;
  /** Speed along the floor at faces [m/s], positive towards the die end. */
  readonly speed: Float64Array;
  /** The same one step ago. */
  readonly speedBefore: Float64Array;
  /** Discharge at faces in the last step [m³/s]. */
  readonly flux: Float64Array;
  /** Mean metal area square to the floor about a face [m²], now and one step ago. */
  readonly area: Float64Array;
  readonly areaBefore: Float64Array;
  /** Speed after advection, then with the explicit forces. */
  readonly advected: Float64Array;
  readonly pushed: Float64Array;
  /** Metal height at the face square to the floor [m], and the cell it comes from. */
  readonly height: Float64Array;
  readonly upstream: Int32Array;
  /** Wetted passage at the face [m²]. */
  readonly passage: Float64Array;
  /** Friction and limiter factor, implicit gravity factor, coupling of the two levels [m²]. */
  readonly hold: Float64Array;
  readonly pull: Float64Array;
  readonly coupling: Float64Array;
  /** Scratch of the tridiagonal solve. */
  readonly target: Float64Array;
  readonly diagonal: Float64Array;
  readonly residual: Float64Array;
  readonly sweep: Float64Array;
  readonly update: Float64Array;
  readonly trial: Float64Array;
  /** Of the nested solve: volume [m³] and chord [m²] of the part that its inner iteration holds straight. */
  readonly restVolume: Float64Array;
  readonly restChord: Float64Array;
  /** Whether the last pass down the cells left an update that solves its rows as they stand. */
  reducedExactly: boolean;
  /** Cells or faces picked out by one loop for the next. */
  readonly marked: Int32Array;
  /** Faces at which skin holds a front in this step, and how many there are. */
  readonly held: Int32Array;
  heldCount: number;
  /** 1 at a face whose skin the pressure behind breaks within the step. */
  readonly broken: Uint8Array;
  /** Levels after turning, before the solve; kept only while skin holds a front. */
  readonly turned: Float64Array;
  /** How the levels moved in the last step after turning [m]. */
  readonly change: Float64Array;
  /** Gas under the roof; null = vented everywhere. */
  gas: Gas | null;
  /** Factor on the speed at each face, 0 where stiff metal blocks the passage; null = metal never stiffens. */
  holds: Float64Array | null;
  /** Cells that hold metal or may soon, first and last: the step leaves the rest alone. */
  activeFrom: number;
  activeTo: number;
  /** The same of this step alone. */
  wetFrom: number;
  wetTo: number;
  /** Level held in the first and last cell [m]; null = free (a die's ends always are). */
  heldStart: number | null;
  heldEnd: number | null;
  /** Metal that has left over a rim so far [m³]. */
  spilled: number;
  /** Work done so far. */
  steps: number;
  newtonIterations: number;
  nestedSolves: number;
}

export function makeFlow(mesh: Mesh): Flow {
  const cell = () => new Float64Array(mesh.cells);
  const face = () => new Float64Array(mesh.cells + 1);
  return {
    levels: makeLevels(mesh.cells),
    volume: cell(),
    level: cell(),
    depth: cell(),
    depthSlope: cell(),
    full: new Uint8Array(mesh.cells),
    speed: face(),
    speedBefore: face(),
    flux: face(),
    area: face(),
    areaBefore: face(),
    advected: face(),
    pushed: face(),
    height: face(),
    upstream: new Int32Array(mesh.cells + 1),
    passage: face(),
    hold: face(),
    pull: face(),
    coupling: face(),
    target: cell(),
    diagonal: cell(),
    residual: cell(),
    sweep: cell(),
    update: cell(),
    trial: cell(),
    restVolume: cell(),
    restChord: cell(),
    reducedExactly: false,
    marked: new Int32Array(mesh.cells + 1),
    held: new Int32Array(mesh.cells + 1),
    heldCount: 0,
    broken: new Uint8Array(mesh.cells + 1),
    turned: cell(),
    change: cell(),
    gas: null,
    holds: null,
    activeFrom: 0,
    activeTo: mesh.cells - 1,
    wetFrom: 0,
    wetTo: mesh.cells - 1,
    heldStart: null,
    heldEnd: null,
    spilled: 0,
    steps: 0,
    newtonIterations: 0,
    nestedSolves: 0,
  };
}

/** Metal in the section [m³], compensated sum. */
export function totalVolume(flow: Flow): number {
  let sum = 0;
  let lost = 0;
  const { volume } = flow;
  for (let i = 0; i < volume.length; i++) {
    const term = volume[i]! - lost;
    const next = sum + term;
    lost = next - sum - term;
    sum = next;
  }
  return sum;
}
