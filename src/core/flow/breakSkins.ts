import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { BLEND_TO, slotLoss } from './gate';
import { SKIN_DEPTH } from './settings';
import { sillLevel } from './sillLevel';

/**
 * Marks the held fronts in a slot that the solved pressure breaks. A column of metal that fills a slot moves as one:
 * when it comes to a face that was held by the levels before the step, the solve stops all of it within the step, and
 * the pressure that this takes shows that the skin would have given way. Without this a front in a slot is stopped at
 * every face, the oftener the finer the mesh.
 * @returns whether any is broken
 */
export function breakSkins(flow: Flow, mesh: Mesh, forces: Forces, dt: number): boolean {
  let any = false;
  for (let k = 0; k < flow.heldCount; k++) {
    const j = flow.held[k]!;
    if (!isBroken(flow, mesh, forces, dt, j)) continue;
    flow.broken[j] = 1;
    any = true;
  }
  return any;
}

function isBroken(flow: Flow, mesh: Mesh, forces: Forces, dt: number, j: number): boolean {
  const wetLeft = flow.depth[j - 1]! > SKIN_DEPTH;
  const wet = wetLeft ? j - 1 : j;
  const gas = flow.gas ? flow.gas.head[wetLeft ? j : j - 1]! : 0;
  const head = flow.level[wet]! - sillLevel(mesh, forces, j) - gas;
  const opening = mesh.tables.free[j]! * forces.cos;
  if (!(opening > 0 && head > BLEND_TO * opening)) return false;
  const path = mesh.facePath[j]!;
  const towards = (wetLeft ? 1 : -1) * flow.advected[j]!;
  return towards + (dt * forces.gravity * head) / path > slotLoss(flow.height[j]!, opening, path, dt, forces);
}
