import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Turn } from './contactArea';
import type { Heat } from './heat';
import { loseHeat } from './loseHeat';
import { settleVolumes } from './settleVolumes';
import { carry } from './transport';

/**
 * One step of the heat, the recipe: carry it with the metal that just moved, hand round-off and spilled metal's share
 * over, lose heat to the die. Call after each `advance` that returned true, with its dt; `turn` is the sine and
 * cosine at the end of the step and `time` its end [s]. Allocates nothing.
 */
export function carryHeat(heat: Heat, flow: Flow, mesh: Mesh, turn: Turn, dt: number, time: number): void {
  carry(heat, flow, mesh, dt);
  settleVolumes(heat, flow, mesh, dt);
  loseHeat(heat, flow, mesh, turn, dt, time);
}
