import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { FULL_SHARE } from './settings';

/** Standard atmosphere [Pa], exact by definition. */
export const ATMOSPHERE = 101_325;
/** Gas in a hot die: air at about 700 K, from the gas law [kg/m³]. Assumed; the vent's flow goes with its root. */
export const HOT_GAS_DENSITY = 0.5;
/** Discharge coefficient of a vent: sharp-edged orifice, textbook value. */
export const VENT_COEFFICIENT = 0.6;
/** Pockets smaller than this area under the roof are let go as a bubble [m²]. */
const LEAST_POCKET = 30e-6;

/** A vent as the gas sees it: its mesh cell and its free area, all cavities together [m²]. */
export interface OpenVent {
  readonly cell: number;
  readonly area: number;
}

/** Gas that metal has shut in, one entry a pocket, from the mouth on; the first `count` entries count. */
export interface Pockets {
  count: number;
  /** First and last mesh cell. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** Pressure times volume at the beginning of the step [Pa m³]. */
  readonly amount: Float64Array;
  /** Volume of its gas at the beginning of the step, and of its mesh cells, metal and gas [m³]. */
  readonly volume: Float64Array;
  readonly room: Float64Array;
  /** Vents that metal does not cover [m²]. */
  readonly vent: Float64Array;
  /** Head of its pressure at the beginning of the step, and what the step adds to it [m of metal]. */
  readonly head: Float64Array;
  readonly rise: Float64Array;
  /** Scratch of the level solve. */
  readonly trial: Float64Array;
  readonly direction: Float64Array;
  readonly pivot: Float64Array;
  readonly update: Float64Array;
}

/** Gas under the roof; allocated once. Cell arrays are per mesh cell. */
export interface Gas {
  /** Pressure times volume of the gas in the cell [Pa m³]. */
  readonly amount: Float64Array;
  /** Pressure above the atmosphere, as head of metal [m]. */
  readonly head: Float64Array;
  /** Which pocket a cell lies in; −1 = none. */
  readonly pocketOf: Int32Array;
  readonly pockets: Pockets;
  readonly vents: readonly OpenVent[];
  /** Weight of the metal, to turn pressure into head [N/m³]. */
  readonly weight: number;
  /** Length of the step [s]. */
  step: number;
  /** What the last step found: sealed volume [m³], greatest back pressure [Pa], and sealed volume without an open vent [m³]. */
  sealedVolume: number;
  backPressure: number;
  heldVolume: number;
  /** What metal has taken of the room of shut pockets so far, less what it gave back [m³]. */
  displaced: number;
  /** Place of the largest sealed pocket: its first and last mesh cell. */
  pocketFrom: number;
  pocketTo: number;
}

export function makeGas(mesh: Mesh, vents: readonly OpenVent[], density: number, gravity: number): Gas {
  return {
    amount: new Float64Array(mesh.cells).fill(Number.NaN),
    head: new Float64Array(mesh.cells),
    pocketOf: new Int32Array(mesh.cells).fill(-1),
    pockets: makePockets(Math.ceil(mesh.cells / 2)),
    vents,
    weight: density * gravity,
    step: 0,
    sealedVolume: 0,
    backPressure: 0,
    heldVolume: 0,
    displaced: 0,
    pocketFrom: -1,
    pocketTo: -1,
  };
}

/** Pockets lie at least a full cell apart, so there are no more than `most`. */
function makePockets(most: number): Pockets {
  const pocket = () => new Float64Array(most);
  return {
    count: 0,
    first: new Int32Array(most),
    last: new Int32Array(most),
    amount: pocket(),
    volume: pocket(),
    room: pocket(),
    vent: pocket(),
    head: pocket(),
    rise: pocket(),
    trial: pocket(),
    direction: pocket(),
    pivot: pocket(),
    update: pocket(),
  };
}

/**
 * Gas of the die for the next step: finds the pockets that metal has shut off from the open basin, and the pressure in
 * each at constant temperature. What the step does to that pressure is solved with the levels (flow/coupledRows.ts); gas
 * leaves or enters through vents that metal does not cover. A pocket with no open vent keeps its volume to within a few
 * parts in a hundred; gas does not bubble through metal.
 */
export function pressGas(gas: Gas, flow: Flow, mesh: Mesh, dt: number): void {
  gas.step = dt;
  gas.sealedVolume = gas.backPressure = gas.heldVolume = 0;
  gas.pocketFrom = gas.pocketTo = -1;
  gas.pockets.count = 0;
  gas.head.fill(0);
  gas.pocketOf.fill(-1);
  let largest = 0;
  let i = 0;
  while (i < mesh.cells) {
    if (mesh.open[i] || isFull(flow, mesh, i)) {
      i++;
      continue;
    }
    let last = i;
    while (last + 1 < mesh.cells && !mesh.open[last + 1] && !isFull(flow, mesh, last + 1)) last++;
    const volume = pressPocket(gas, flow, mesh, i, last);
    if (volume > largest) {
      largest = volume;
      gas.pocketFrom = i;
      gas.pocketTo = last;
    }
    i = last + 1;
  }
  dropGasOfFullCells(gas, flow, mesh);
}

/** Presses one run of cells with gas; returns its volume when sealed, else 0 [m³]. */
function pressPocket(gas: Gas, flow: Flow, mesh: Mesh, first: number, last: number): number {
  let volume = 0;
  let area = 0;
  let room = 0;
  for (let i = first; i <= last; i++) {
    const free = freeVolume(flow, mesh, i);
    volume += free;
    area += free / mesh.width[i]!;
    room += mesh.volume[i]!;
  }
  if (isAiry(flow, mesh, first, last) || area < LEAST_POCKET) {
    for (let i = first; i <= last; i++) gas.amount[i] = ATMOSPHERE * freeVolume(flow, mesh, i);
    return 0;
  }
  const { pockets } = gas;
  const k = pockets.count++;
  const amount = amountIn(gas, flow, mesh, first, last);
  pockets.first[k] = first;
  pockets.last[k] = last;
  pockets.amount[k] = amount;
  pockets.volume[k] = volume;
  pockets.room[k] = room;
  pockets.vent[k] = openVentArea(gas, first, last);
  pockets.head[k] = (amount / volume - ATMOSPHERE) / gas.weight;
  pockets.rise[k] = pockets.direction[k] = 0;
  for (let i = first; i <= last; i++) {
    gas.amount[i] = (amount * freeVolume(flow, mesh, i)) / volume;
    gas.head[i] = pockets.head[k]!;
    gas.pocketOf[i] = k;
  }
  gas.sealedVolume += volume;
  if (pockets.vent[k] === 0) gas.heldVolume += volume;
  return volume;
}

/** Gas in a run, with what cells that have just filled beside it pressed out of themselves. */
function amountIn(gas: Gas, flow: Flow, mesh: Mesh, first: number, last: number): number {
  let sum = 0;
  for (let i = first; i <= last; i++) {
    const here = gas.amount[i]!;
    sum += Number.isNaN(here) ? ATMOSPHERE * freeVolume(flow, mesh, i) : here;
  }
  for (let i = first - 1; i >= 0 && isFull(flow, mesh, i) && gas.amount[i]! > 0; i--) sum += take(gas, i);
  for (let i = last + 1; i < mesh.cells && isFull(flow, mesh, i) && gas.amount[i]! > 0; i++)
    sum += take(gas, i);
  return sum;
}

function take(gas: Gas, i: number): number {
  const amount = gas.amount[i]!;
  gas.amount[i] = 0;
  return amount;
}

function dropGasOfFullCells(gas: Gas, flow: Flow, mesh: Mesh): void {
  for (let i = 0; i < mesh.cells; i++) if (isFull(flow, mesh, i)) gas.amount[i] = 0;
}

function openVentArea(gas: Gas, first: number, last: number): number {
  let area = 0;
  for (const vent of gas.vents) if (vent.cell >= first && vent.cell <= last) area += vent.area;
  return area;
}

/** Whether a run of gas reaches the open basin: its end lies beside an open cell whose metal does not cover the passage. */
function isAiry(flow: Flow, mesh: Mesh, first: number, last: number): boolean {
  return (
    (first > 0 && mesh.open[first - 1] === 1 && passageFree(flow, mesh, first - 1, first)) ||
    (last + 1 < mesh.cells && mesh.open[last + 1] === 1 && passageFree(flow, mesh, last + 1, last + 1))
  );
}

/** Whether metal in the open cell stands below the top of the passage at the face. */
function passageFree(flow: Flow, mesh: Mesh, openCell: number, face: number): boolean {
  const floor = openCell < face ? mesh.floorRight[openCell]! : mesh.floorLeft[openCell]!;
  return floor + flow.depth[openCell]! < mesh.ceiling[face]!;
}

function freeVolume(flow: Flow, mesh: Mesh, i: number): number {
  return Math.max(0, mesh.volume[i]! - flow.volume[i]!);
}

function isFull(flow: Flow, mesh: Mesh, i: number): boolean {
  return flow.volume[i]! >= mesh.volume[i]! * FULL_SHARE;
}
