import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { type GateResult, gateAtFront, noseForce, noseSide, slotBlend, slotLoss } from './gate';
import { CLOSED, SKIN_DEPTH } from './settings';
import { sillLevel } from './sillLevel';

/**
 * What happens at few faces: the skin of a front holds the metal back, a floor step passes no more than critical
 * flow, a film that plunges gains no more speed than its fall gives. Changes passage, hold and pushed; a face
 * that lets nothing pass has passage 0.
 */
export function adjustFace(flow: Flow, mesh: Mesh, forces: Forces, dt: number, j: number): void {
  const bothFull = flow.full[j - 1] === 1 && flow.full[j] === 1;
  if (forces.capillaryGate && !bothFull && !passSkin(flow, mesh, forces, j, dt)) {
    shut(flow, j);
    return;
  }
  const rise = flow.level[j]! - flow.level[j - 1]!;
  const likely = Math.abs(flow.advected[j]! - (dt * forces.gravity * rise) / mesh.facePath[j]!);
  if (mesh.step[j] && likely > 0 && !passStep(flow, mesh, forces, j, likely)) {
    shut(flow, j);
    return;
  }
  if (!bothFull) limitPlunge(flow, forces, j, rise, likely);
}

function shut({ passage, pushed }: Flow, j: number): void {
  passage[j] = pushed[j] = 0;
}

const gate: GateResult = { open: false, loss: 0 };

/** Takes from the push what the skin of a front costs; false when it holds the front. */
function passSkin(flow: Flow, mesh: Mesh, forces: Forces, j: number, dt: number): boolean {
  const { depth, level, advected, pushed } = flow;
  const l = j - 1;
  const u = advected[j]!;
  const rise = level[j]! - level[l]!;
  const path = mesh.facePath[j]!;
  const wetLeft = depth[l]! > SKIN_DEPTH;
  if (wetLeft !== depth[j]! > SKIN_DEPTH) {
    const sign = wetLeft ? 1 : -1;
    const gas = flow.gas ? flow.gas.head[wetLeft ? j : l]! : 0;
    const head = (wetLeft ? level[l]! : level[j]!) - sillLevel(mesh, forces, j) - gas;
    const opening = Math.max(mesh.tables.free[j]! * forces.cos, CLOSED);
    const following = sign * flow.speed[wetLeft ? l : j + 1]!;
    gateAtFront(gate, sign * u, following, head, -sign * rise, flow.height[j]!, opening, path, dt, forces);
    if (flow.broken[j]) breakSkin(flow, mesh, forces, j, dt);
    if (gate.open) pushed[j] = pushed[j]! - sign * gate.loss;
    else flow.held[flow.heldCount++] = j;
    return gate.open;
  }
  const sign = noseSide(depth, l, j, mesh.cells);
  if (sign === 0) return true;
  const towards = sign * (u - (dt * forces.gravity * rise) / path);
  if (towards <= 0) return true;
  const filled = sign > 0 ? depth[j]! / depth[l]! : depth[l]! / depth[j]!;
  const head = level[sign > 0 ? l : j]! - sillLevel(mesh, forces, j);
  const free = Math.max(mesh.tables.free[j]!, CLOSED);
  const blend = slotBlend(head, Math.max(free * forces.cos, CLOSED));
  const height = flow.area[j]! / mesh.faceWidth[j]!;
  const pressed = pressedAhead(flow, mesh, forces, sign > 0 ? j : l, sign);
  const loss = (dt * noseForce(pressed, filled, blend, height, free, forces)) / path;
  pushed[j] = pushed[j]! - sign * loss;
  // What moves in a slot moves as one: the solve weighs the force against the whole column, not against this face.
  return towards > loss || sign * u * blend > 0;
}

/**
 * What the metal of a nose cell presses with on the held face ahead of it, as on a wall, over density [m³/s²]. A floor
 * step bears metal below its sill as well.
 */
function pressedAhead({ level, gas }: Flow, mesh: Mesh, forces: Forces, nose: number, sign: number): number {
  const { gravity, sin, cos } = forces;
  const air = gas ? gas.head[nose + sign]! : 0;
  const ahead = sign > 0 ? nose + 1 : nose;
  const floor = sign > 0 ? mesh.floorRight[nose]! : mesh.floorLeft[nose]!;
  const head = Math.max(0, level[nose]! - mesh.x[ahead]! * sin - floor * cos - air);
  return (gravity * head * head) / (2 * Math.max(cos, 0.05));
}

/** The pressure of the step has broken it: it passes, and costs what the skin of a slot does. */
function breakSkin(flow: Flow, mesh: Mesh, forces: Forces, j: number, dt: number): void {
  const opening = Math.max(mesh.tables.free[j]! * forces.cos, CLOSED);
  gate.open = true;
  gate.loss = slotLoss(flow.height[j]!, opening, mesh.facePath[j]!, dt, forces);
}

/** Holds what passes a floor step to critical flow; false when the metal does not reach over the sill. */
function passStep(flow: Flow, mesh: Mesh, forces: Forces, j: number, likely: number): boolean {
  const { speed, height, hold, passage } = flow;
  const up = flow.upstream[j]!;
  const down = up === j ? j - 1 : j;
  const coming = up < j ? speed[j - 1]! : speed[j + 1]!;
  const air = flow.gas ? flow.gas.head[down]! : 0;
  const energy =
    forces.gravity * (flow.level[up]! - sillLevel(mesh, forces, j) - air) + (coming * coming) / 2;
  if (energy <= 0) return false;
  const normalGravity = forces.gravity * Math.max(forces.cos, 1e-3);
  const most = weirDischarge(energy, normalGravity, mesh.tables.free[j]!);
  if (likely * height[j]! <= most) return true;
  height[j] = Math.min(height[j]!, (2 * energy) / (3 * normalGravity));
  passage[j] = height[j]! * mesh.faceWidth[j]!;
  hold[j] = hold[j]! * Math.min(1, most / height[j]! / likely);
  return true;
}

/** A film running down into deep metal is driven by the whole cell's gravity; it gains no more than its fall. */
function limitPlunge(flow: Flow, { gravity }: Forces, j: number, rise: number, likely: number): void {
  const { depth, speed, hold, advected } = flow;
  const up = flow.upstream[j]!;
  const down = up === j ? j - 1 : j;
  if (depth[up]! >= 0.5 * depth[down]! || rise < 0 !== up < j) return;
  const before = Math.max(Math.abs(speed[j - 1]!), Math.abs(speed[j + 1]!), Math.abs(advected[j]!));
  const limit = Math.sqrt(before * before + 2 * gravity * Math.abs(rise)) + 1e-3;
  if (likely > limit) hold[j] = (hold[j]! * limit) / likely;
}

/** Most that can pass a step for a given specific energy: critical flow, or an orifice when it fills the opening [m²/s]. */
function weirDischarge(energy: number, normalGravity: number, free: number): number {
  const critical = (2 * energy) / (3 * normalGravity);
  if (critical > free) return free * Math.sqrt(Math.max(0, 2 * (energy - normalGravity * free)));
  return (((2 * energy) / 3) * Math.sqrt((2 * energy) / 3)) / normalGravity;
}
