import { volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import { settleHeldEnds } from './ends';
import type { Flow } from './flow';
import type { Forces } from './forces';

/**
 * Speeds and discharges from the new levels (the discharge is fully implicit: a weighted one rings at
 * shorelines), then the volumes from the discharges, so what leaves a cell enters its neighbour to the last bit.
 */
export function finish(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  setSpeeds(flow, mesh, dt);
  settleHeldEnds(flow, mesh, dt);
  const outside = moveMetal(flow, mesh, dt);
  if (outside >= 0) settleRoundOff(flow, mesh, outside);
  if (mesh.upsideDown) dropFromOpenings(flow, mesh);
  else spillOverRims(flow, mesh, forces, dt);
}

function setSpeeds(flow: Flow, mesh: Mesh, dt: number): void {
  const { level, speed, flux, pushed, passage, hold, pull, activeFrom, activeTo } = flow;
  const { perPath } = mesh.tables;
  const last = Math.min(mesh.cells - 1, activeTo + 1);
  const first = Math.max(1, activeFrom);
  let levelRight = level[first - 1]!;
  for (let j = first; j <= last; j++) {
    const levelLeft = levelRight;
    levelRight = level[j]!;
    const passing = passage[j]!;
    const u =
      passing === 0 ? 0 : hold[j]! * (pushed[j]! - dt * pull[j]! * (levelRight - levelLeft) * perPath[j]!);
    speed[j] = u;
    flux[j] = passing * u;
  }
}

/** Volumes from the discharges; returns the first cell that round-off left outside 0..full, −1 for none. */
function moveMetal({ volume, flux, activeFrom, activeTo }: Flow, mesh: Mesh, dt: number): number {
  const most = mesh.volume;
  let outside = -1;
  let entering = flux[activeFrom]!;
  for (let i = activeFrom; i <= activeTo; i++) {
    const leaving = flux[i + 1]!;
    const next = volume[i]! - dt * (leaving - entering);
    volume[i] = next;
    if (outside < 0 && (next < 0 || next > most[i]!)) outside = i;
    entering = leaving;
  }
  return outside;
}

/**
 * Round-off outside 0..full is handed to a neighbour, never dropped: on towards the last cell, and from there back to
 * the first cell that can keep it. Cells before `outside` are within their bounds.
 */
function settleRoundOff(flow: Flow, mesh: Mesh, outside: number): void {
  const { volume, activeFrom: first, activeTo: last } = flow;
  for (let i = outside; i < last; i++) passExcess(volume, mesh, i, i + 1);
  for (let i = last; i > first && passExcess(volume, mesh, i, i - 1); i--);
}

/** Returns whether there was any. */
function passExcess(volume: Float64Array, mesh: Mesh, from: number, to: number): boolean {
  const here = volume[from]!;
  const most = mesh.volume[from]!;
  if (!(here < 0 || here > most)) return false;
  const kept = here < 0 ? 0 : most;
  volume[to] = volume[to]! + (here - kept);
  volume[from] = kept;
  return true;
}

/** Metal above a rim leaves over it at no more than critical flow, and is counted. */
function spillOverRims(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  for (const rim of mesh.rims) {
    const i = rim.cell;
    const rimLevel = rim.x * forces.sin + rim.y * forces.cos;
    const above = flow.level[i]! - rimLevel;
    if (above <= 0 || flow.volume[i]! <= 0) continue;
    const chordVolume = flow.volume[i]! - volumeUnder(flow.levels, mesh, i, rimLevel);
    const critical = (2 / 3) * above * Math.sqrt((2 / 3) * above * forces.gravity) * mesh.width[i]! * dt;
    const leaving = Math.max(0, Math.min(chordVolume, critical));
    flow.volume[i] = flow.volume[i]! - leaving;
    flow.spilled += leaving;
  }
}

/** Past −90° an opening faces down: whatever comes to it is gone. */
function dropFromOpenings(flow: Flow, mesh: Mesh): void {
  for (let i = 0; i < mesh.cells; i++) {
    if (!mesh.open[i] || flow.volume[i]! <= 0) continue;
    flow.spilled += flow.volume[i]!;
    flow.volume[i] = 0;
  }
}
