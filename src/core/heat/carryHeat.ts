import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { conduct } from './conduct';
import type { Turn } from './contactArea';
import type { Heat } from './heat';
import { loseHeat } from './loseHeat';
import { settleVolumes } from './settleVolumes';
import { carry } from './transport';

/**
 * Longest time that heat may be owed before it is lost [s]: what the watchers look at is never older. Walls lose
 * their superheat in a second or more, so a shorter one only costs time (docs/heat.md has the figures).
 */
export const LOSS_TIME = 2e-3;

/**
 * One step of the heat, the recipe: carry it with the metal that just moved, hand round-off and spilled metal's share
 * over, and every 2 ms level it along the metal and lose it to the die. Call after each `advance` that returned true, with its dt; `turn` is the sine and
 * cosine at the end of the step and `time` its end [s]. Allocates nothing.
 */
export function carryHeat(heat: Heat, flow: Flow, mesh: Mesh, turn: Turn, dt: number, time: number): void {
  carry(heat, flow, mesh, dt);
  settleVolumes(heat, flow, mesh, dt);
  heat.owed += dt;
  // A hair of room: two steps of 1 ms need not add up to 2 ms to the last bit.
  if (heat.owed < LOSS_TIME * (1 - 1e-6)) return;
  conduct(heat, flow, mesh, heat.owed);
  loseHeat(heat, flow, mesh, turn, heat.owed, time);
  heat.owed = 0;
}
