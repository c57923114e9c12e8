import { type Levels, makeLevels } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';

import type { Gas } from './gas';

/**
 * The state of the metal and the scratch of a step, all allocated once. Cell arrays have `cells` entries,
 * face arrays `cells + 1`; faces 0 and `cells` are the end walls.
 *
 * A class, and its fields no more than declared, since an engine learns by the first state what the fields of all hold:
 * a second one of the same make, as each later pour of a worker has it, then leaves the compiled code as it is. A
 * literal, or fields that are first undefined, have it thrown away.
 */
export class Flow {
  declare readonly levels: Levels;
  /** Metal in the cell [m³]. */
  declare readonly volume: Float64Array;
  /** Lab elevation of the free surface, or piezometric head of a full cell [m]. */
  declare readonly level: Float64Array;
  /** Depth, normal to the axis, mean of the cell [m], and its limited difference across the cell [m]. */
  declare readonly depth: Float64Array;
  declare readonly depthSlope: Float64Array;
  declare readonly full: Uint8Array;
  /** Speed along the floor at faces [m/s], positive towards the die end. */
  declare readonly speed: Float64Array;
  /** The same one step ago. */
  declare readonly speedBefore: Float64Array;
  /** Discharge at faces in the last step [m³/s]. */
  declare readonly flux: Float64Array;
  /** Mean metal area square to the floor about a face [m²], now and one step ago. */
  declare readonly area: Float64Array;
  declare readonly areaBefore: Float64Array;
  /** Speed after advection, then with the explicit forces. */
  declare readonly advected: Float64Array;
  declare readonly pushed: Float64Array;
  /** Metal height at the face square to the floor [m], and the cell it comes from. */
  declare readonly height: Float64Array;
  declare readonly upstream: Int32Array;
  /** Wetted passage at the face [m²]. */
  declare readonly passage: Float64Array;
  /** Friction and limiter factor, implicit gravity factor, coupling of the two levels [m²]. */
  declare readonly hold: Float64Array;
  declare readonly pull: Float64Array;
  declare readonly coupling: Float64Array;
  /** Scratch of the tridiagonal solve. */
  declare readonly target: Float64Array;
  declare readonly sweep: Float64Array;
  declare readonly update: Float64Array;
  declare readonly trial: Float64Array;
  /** Levels before the solve [m]. */
  declare readonly before: Float64Array;
  /** Which way a searched step of the level solve goes [m]. */
  declare readonly direction: Float64Array;
  /** Column of a pocket's pressure in that solve [m²]. */
  declare readonly column: Float64Array;
  /** Whether the last pass down the cells left an update that solves its rows as they stand. */
  declare reducedExactly: boolean;
  /** Cells or faces picked out by one loop for the next. */
  declare readonly marked: Int32Array;
  /** Faces at which skin holds a front in this step, and how many there are. */
  declare readonly held: Int32Array;
  declare heldCount: number;
  /** 1 at a face whose skin the pressure behind breaks within the step. */
  declare readonly broken: Uint8Array;
  /** Levels after turning, before the solve; kept only while skin holds a front. */
  declare readonly turned: Float64Array;
  /** How the levels moved in the last step after turning [m]. */
  declare readonly change: Float64Array;
  /** Gas under the roof; null = vented everywhere. */
  declare gas: Gas | null;
  /** Factor on the speed at each face, 0 where stiff metal blocks the passage; null = metal never stiffens. */
  declare holds: Float64Array | null;
  /** Cells that hold metal or may soon, first and last: the step leaves the rest alone. */
  declare activeFrom: number;
  declare activeTo: number;
  /** The same of this step alone. */
  declare wetFrom: number;
  declare wetTo: number;
  /** Level held in the first and last cell [m]; null = free (a die's ends always are). */
  declare heldStart: number | null;
  declare heldEnd: number | null;
  /** Metal that has left over a rim so far [m³]. */
  declare spilled: number;
  /** Work done so far. */
  declare steps: number;
  declare newtonIterations: number;
  declare searchedSolves: number;

  constructor(mesh: Mesh) {
    const cell = () => new Float64Array(mesh.cells);
    const face = () => new Float64Array(mesh.cells + 1);
    this.levels = makeLevels(mesh.cells);
    this.volume = cell();
    this.level = cell();
    this.depth = cell();
    this.depthSlope = cell();
    this.full = new Uint8Array(mesh.cells);
    this.speed = face();
    this.speedBefore = face();
    this.flux = face();
    this.area = face();
    this.areaBefore = face();
    this.advected = face();
    this.pushed = face();
    this.height = face();
    this.upstream = new Int32Array(mesh.cells + 1);
    this.passage = face();
    this.hold = face();
    this.pull = face();
    this.coupling = face();
    this.target = cell();
    this.direction = cell();
    this.column = cell();
    this.sweep = cell();
    this.update = cell();
    this.trial = cell();
    this.before = cell();
    this.reducedExactly = false;
    this.marked = new Int32Array(mesh.cells + 1);
    this.held = new Int32Array(mesh.cells + 1);
    this.heldCount = 0;
    this.broken = new Uint8Array(mesh.cells + 1);
    this.turned = cell();
    this.change = cell();
    this.gas = null;
    this.holds = null;
    this.activeFrom = 0;
    this.activeTo = mesh.cells - 1;
    this.wetFrom = 0;
    this.wetTo = mesh.cells - 1;
    this.heldStart = null;
    this.heldEnd = null;
    this.spilled = 0;
    this.steps = 0;
    this.newtonIterations = 0;
    this.searchedSolves = 0;
  }
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
