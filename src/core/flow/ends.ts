import { volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { End } from './conditions';
import type { Flow } from './flow';
import type { Forces } from './forces';

/** Discharges entering at the ends during the step [m³/s, towards +x], from the state before it. */
export function openEnds(flow: Flow, mesh: Mesh, forces: Forces): void {
  const { start, end } = forces.conditions;
  flow.heldStart = heldLevel(start, flow, 0, forces, mesh);
  flow.heldEnd = heldLevel(end, flow, mesh.cells - 1, forces, mesh);
  flow.flux[0] = start.kind === 'inflow' ? start.discharge : start.kind === 'level' ? flow.flux[0]! : 0;
  flow.flux[mesh.cells] =
    end.kind === 'inflow'
      ? -end.discharge
      : end.kind === 'level' && flow.heldEnd === null
        ? flow.flux[mesh.cells - 1]!
        : flow.flux[mesh.cells]!;
  setEndSpeed(flow, mesh, 0, 0);
  setEndSpeed(flow, mesh, mesh.cells, mesh.cells - 1);
}

function setEndSpeed(flow: Flow, mesh: Mesh, face: number, cell: number): void {
  const passage = flow.depth[cell]! * mesh.floorCos[cell]! * mesh.width[cell]!;
  flow.speed[face] = passage > 0 ? flow.flux[face]! / passage : 0;
}

function heldLevel(end: End, flow: Flow, cell: number, forces: Forces, mesh: Mesh): number | null {
  if (end.kind !== 'level') return null;
  if (!end.whileSubcritical) return end.level;
  const u = Math.abs(flow.flux[cell]!) / Math.max(1e-12, flow.depth[cell]! * mesh.width[cell]!);
  return u * u > forces.gravity * forces.cos * flow.depth[cell]! ? null : end.level;
}

/** What passed a held end is what its cell did not keep. */
export function settleHeldEnds(flow: Flow, mesh: Mesh, dt: number): void {
  const last = mesh.cells - 1;
  if (flow.heldStart !== null) {
    const kept = volumeUnder(flow.levels, mesh, 0, flow.level[0]!);
    flow.flux[0] = flow.flux[1]! + (kept - flow.volume[0]!) / dt;
  }
  if (flow.heldEnd !== null) {
    const kept = volumeUnder(flow.levels, mesh, last, flow.level[last]!);
    flow.flux[last + 1] = flow.flux[last]! - (kept - flow.volume[last]!) / dt;
  }
}
