import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Heat } from './heat';

/**
 * After the discharges the flow hands round-off outside 0..full to a neighbour and lets metal out over the rims
 * (flow/finish.ts). The same is done here with the heat: handed metal brings its heat content, and what is
 * then missing from a cell has spilled, with its own.
 */
export function settleVolumes(heat: Heat, flow: Flow, mesh: Mesh, dt: number): void {
  const { moving, volumeBefore, enthalpy, freezing } = heat;
  const { flux, volume, activeFrom: first, activeTo: last } = flow;
  for (let i = first; i <= last; i++) moving[i] = volumeBefore[i]! - dt * (flux[i + 1]! - flux[i]!);
  for (let i = first; i < last; i++) handOver(heat, mesh, i, i + 1);
  for (let i = last; i > first; i--) handOver(heat, mesh, i, i - 1);
  let gone = 0;
  for (let i = first; i <= last; i++) {
    gone += (moving[i]! - volume[i]!) * enthalpy[i]!;
    volumeBefore[i] = volume[i]!;
  }
  heat.spilled += freezing.density * gone;
}

function handOver(heat: Heat, mesh: Mesh, from: number, to: number): void {
  const { moving, enthalpy } = heat;
  const here = moving[from]!;
  const excess = here < 0 ? here : here > mesh.volume[from]! ? here - mesh.volume[from]! : 0;
  if (excess === 0) return;
  const there = moving[to]!;
  const sum = there + excess;
  if (excess > 0 && sum > 0) {
    enthalpy[to] = enthalpy[to]! + (excess / sum) * (enthalpy[from]! - enthalpy[to]!);
  }
  moving[to] = sum;
  moving[from] = here - excess;
}
