import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Heat } from './heat';
import { isMetal, PLUG } from './plug';

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
 * the more liquid side, so that only metal gone stiff on both sides blocks a passage; 1 where there is no metal.
 * Meant to multiply the flow's `hold`, face by face, at the start of a step.
 */
export function setFrontHolds(holds: Float64Array, heat: Heat, flow: Flow, mesh: Mesh): void {
  holds.fill(1);
  if (!heat.hasSolid) return;
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  for (let j = Math.max(1, flow.activeFrom); j <= last; j++) {
    const left = sideFactor(heat, flow, mesh, j, -1);
    // Liquid on one side is enough: the other need not be looked at.
    const best = left === 1 ? 1 : Math.max(left, sideFactor(heat, flow, mesh, j, 1));
    holds[j] = best < 0 ? 1 : best;
  }
}

/** Factor of the metal within a plug's length of face j, behind (−1) or ahead of it (1); −1 where there is too little metal. */
function sideFactor(heat: Heat, flow: Flow, mesh: Mesh, j: number, side: 1 | -1): number {
  const first = side < 0 ? j - 1 : j;
  if (!isMetal(heat, flow, first)) return -1;
  if (heat.solid[first] === 0) return 1;
  let volume = 0;
  let solid = 0;
  for (let i = first; i >= 0 && i < mesh.cells && isMetal(heat, flow, i); i += side) {
    volume += flow.volume[i]!;
    solid += flow.volume[i]! * heat.solid[i]!;
    const reached = Math.abs(mesh.facePlace[side < 0 ? i : i + 1]! - mesh.facePlace[j]!);
    if (reached >= PLUG) break;
  }
  return holdFactor(solid / volume, heat.freezing.coherency);
}
