import { GRAVITY } from '$src/core/gravity';
import type { Mesh } from '$src/core/mesh/mesh';
import { advect } from './advect';
import { breakSkins } from './breakSkins';
import { openEnds } from './ends';
import { setFaces } from './faces';
import { finish } from './finish';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { pressGas } from './gas';
import { rotate } from './rotate';
import { COURANT, LONGEST_STEP, WAVE_DEPTH } from './settings';
import { keepHeads, resetHeads, settleGas } from './settleGas';
import { solveLevel } from './solveLevel';

/**
 * One step of the metal, the recipe: turn the body, carry momentum, set the faces, solve all levels at once,
 * move the metal. `forces` holds sine and cosine at the end of the step.
 * @returns false when the level solve found no answer; the state is then not to be used further
 */
export function advance(flow: Flow, mesh: Mesh, forces: Forces, dt: number, largestCell: number): boolean {
  if (flow.gas) pressGas(flow.gas, flow, mesh, dt);
  rotate(flow, mesh, forces);
  openEnds(flow, mesh, forces);
  advect(flow, mesh, dt);
  setFaces(flow, mesh, forces, dt);
  setTargets(flow, mesh, dt);
  if (!solveWithSkin(flow, mesh, forces, dt, largestCell)) return false;
  finish(flow, mesh, forces, dt);
  if (flow.gas) settleGas(flow, flow.gas);
  flow.steps++;
  return true;
}

/** Solves all levels, and once more with those fronts let go whose skin cannot bear the pressure that came out. */
function solveWithSkin(flow: Flow, mesh: Mesh, forces: Forces, dt: number, largestCell: number): boolean {
  if (flow.heldCount > 0) flow.turned.set(flow.level);
  if (!solve(flow, mesh, largestCell)) return false;
  if (flow.heldCount === 0 || !breakSkins(flow, mesh, forces, dt)) return true;
  flow.level.set(flow.turned);
  if (flow.gas) resetHeads(flow.gas);
  setFaces(flow, mesh, forces, dt);
  setTargets(flow, mesh, dt);
  flow.broken.fill(0);
  return solve(flow, mesh, largestCell);
}

function solve(flow: Flow, mesh: Mesh, largestCell: number): boolean {
  if (!solveLevel(flow, mesh, largestCell)) return false;
  if (flow.gas) keepHeads(flow.gas);
  return true;
}

/** What each cell would hold if only the explicit push moved the metal. */
function setTargets(flow: Flow, mesh: Mesh, dt: number): void {
  const { target, volume, passage, hold, pushed, flux, activeFrom, activeTo } = flow;
  const end = mesh.cells;
  let entering = activeFrom === 0 ? flux[0]! : 0;
  for (let i = activeFrom; i <= activeTo; i++) {
    const j = i + 1;
    const leaving = j === end ? flux[j]! : passage[j]! > 0 ? passage[j]! * hold[j]! * pushed[j]! : 0;
    target[i] = volume[i]! - dt * (leaving - entering);
    entering = leaving;
  }
}

/** Longest allowed step [s]: no metal crosses half a cell, no wave a mesh spacing. Metal outside the active cells is at rest. */
export function stepLength(
  { speed, activeFrom, activeTo }: Flow,
  mesh: Mesh,
  longest = LONGEST_STEP,
): number {
  const { cells } = mesh;
  const { perPath } = mesh.tables;
  const last = Math.min(cells - 1, activeTo + 1);
  let quickest = 0;
  for (let j = Math.max(1, activeFrom); j <= last; j++) {
    const share = Math.abs(speed[j]!) * perPath[j]!;
    if (share > quickest) quickest = share;
  }
  const wave = (mesh.x[cells]! - mesh.x[0]!) / cells / Math.sqrt(GRAVITY * WAVE_DEPTH);
  const courant = quickest > 0 ? COURANT / quickest : longest;
  return Math.min(longest, courant, wave);
}

/** Largest cell under a real roof [m³]: what the solve's tolerance is measured against. */
export function largestOrdinaryCell(mesh: Mesh): number {
  let largest = 0;
  for (let i = 0; i < mesh.cells; i++) if (!mesh.open[i]) largest = Math.max(largest, mesh.volume[i]!);
  return largest > 0 ? largest : Math.max(...mesh.volume);
}
