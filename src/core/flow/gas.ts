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

/** Gas under the roof, per mesh cell; allocated once. */
export interface Gas {
  /** Pressure times volume of the gas in the cell [Pa m³]. */
  readonly amount: Float64Array;
  /** Pressure above the atmosphere, as head of metal [m]. */
  readonly head: Float64Array;
  /** 1 where the gas has no way to the open air but vents. */
  readonly sealed: Uint8Array;
  readonly vents: readonly OpenVent[];
  /** Of the metal, to turn pressure into head [kg/m³]. */
  readonly density: number;
  /** What the last step found: sealed volume [m³], greatest back pressure [Pa], gas through vents [m³/s], and sealed volume without an open vent [m³]. */
  sealedVolume: number;
  backPressure: number;
  ventFlow: number;
  heldVolume: number;
  /** Place of the largest sealed pocket: its first and last mesh cell. */
  pocketFrom: number;
  pocketTo: number;
}

export function makeGas(mesh: Mesh, vents: readonly OpenVent[], density: number): Gas {
  return {
    amount: new Float64Array(mesh.cells).fill(Number.NaN),
    head: new Float64Array(mesh.cells),
    sealed: new Uint8Array(mesh.cells),
    vents,
    density,
    sealedVolume: 0,
    backPressure: 0,
    ventFlow: 0,
    heldVolume: 0,
    pocketFrom: -1,
    pocketTo: -1,
  };
}

/**
 * Gas of the die for the next step: finds the pockets that metal has shut off from the open basin, compresses
 * them (constant temperature), lets them out through vents that metal does not cover, and turns their pressure
 * into heads that the level solve works against. A pocket with no open vent thus keeps its volume to within a few
 * parts in a hundred; gas does not bubble through metal.
 */
export function pressGas(gas: Gas, flow: Flow, mesh: Mesh, gravity: number, dt: number): void {
  gas.sealedVolume = gas.backPressure = gas.ventFlow = gas.heldVolume = 0;
  gas.pocketFrom = gas.pocketTo = -1;
  gas.head.fill(0);
  gas.sealed.fill(0);
  let largest = 0;
  let i = 0;
  while (i < mesh.cells) {
    if (mesh.open[i] || isFull(flow, mesh, i)) {
      i++;
      continue;
    }
    let last = i;
    while (last + 1 < mesh.cells && !mesh.open[last + 1] && !isFull(flow, mesh, last + 1)) last++;
    const volume = pressPocket(gas, flow, mesh, i, last, gas.density * gravity, dt);
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
function pressPocket(
  gas: Gas,
  flow: Flow,
  mesh: Mesh,
  first: number,
  last: number,
  weight: number,
  dt: number,
): number {
  let volume = 0;
  let area = 0;
  for (let i = first; i <= last; i++) {
    volume += freeVolume(flow, mesh, i);
    area += freeVolume(flow, mesh, i) / mesh.width[i]!;
  }
  if (isAiry(flow, mesh, first, last) || area < LEAST_POCKET) {
    for (let i = first; i <= last; i++) gas.amount[i] = ATMOSPHERE * freeVolume(flow, mesh, i);
    return 0;
  }
  const amount = amountIn(gas, flow, mesh, first, last);
  const vent = openVentArea(gas, first, last);
  const pressed = Math.max(0, amount / volume - ATMOSPHERE);
  const leaving = VENT_COEFFICIENT * vent * Math.sqrt((2 * pressed) / HOT_GAS_DENSITY);
  const kept = Math.max(amount - ATMOSPHERE * leaving * dt, Math.min(amount, ATMOSPHERE * volume));
  const pressure = kept / volume - ATMOSPHERE;
  for (let i = first; i <= last; i++) {
    gas.amount[i] = (kept * freeVolume(flow, mesh, i)) / volume;
    gas.head[i] = pressure / weight;
    gas.sealed[i] = 1;
  }
  gas.sealedVolume += volume;
  if (vent === 0) gas.heldVolume += volume;
  gas.ventFlow += (amount - kept) / (ATMOSPHERE * dt);
  gas.backPressure = Math.max(gas.backPressure, pressure);
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
