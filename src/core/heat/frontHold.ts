import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { CONTACT_DEPTH, type Heat } from './heat';

/**
 * Below this share of the coherency fraction a front runs freely; from there to coherency it is slowed in a straight
 * line, so that it comes to rest and does not stop dead within a step. The share is ours, no source.
 */
const FREE_SHARE = 0.8;

/**
 * Factor on the speed of metal of a solid fraction: 1 while it runs, 0 at coherency and above (misrun).
 * Solid fraction at which it stops: 0.2 to 0.35 for long freezing ranges, near 1 for skin-forming metals (from memory).
 */
export function holdFactor(solidFraction: number, coherency: number): number {
  const left = (coherency - solidFraction) / ((1 - FREE_SHARE) * coherency);
  return left <= 0 ? 0 : left >= 1 ? 1 : left;
}

/**
 * Writes the factor of every face, 0 to 1: at a front that of the metal behind it, between two cells with metal that of
 * the more liquid one, so that only metal gone stiff on both sides blocks a passage; 1 where there is no metal.
 * Meant to multiply the flow's `hold`, face by face, at the start of a step.
 */
export function setFrontHolds(holds: Float64Array, heat: Heat, flow: Flow, mesh: Mesh): void {
  const { coherency } = heat.freezing;
  holds[0] = holds[mesh.cells] = 1;
  for (let j = 1; j < mesh.cells; j++) {
    const left = cellFactor(heat, flow, j - 1, coherency);
    const right = cellFactor(heat, flow, j, coherency);
    const best = left > right ? left : right;
    holds[j] = best < 0 ? 1 : best;
  }
}

/** −1 where there is too little metal to hold or be held. */
function cellFactor(heat: Heat, flow: Flow, i: number, coherency: number): number {
  return flow.depth[i]! < CONTACT_DEPTH || Number.isNaN(heat.solid[i]!)
    ? -1
    : holdFactor(heat.solid[i]!, coherency);
}
