import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';

const NO_METAL = 1e-14;

/**
 * Carries momentum: u* = u − dt (divergence of momentum − u × divergence of mass)/(A Δs), upwind with limited
 * slopes, with the discharges of the last step and the areas of now, so momentum is conserved across bores.
 * Clipped to the speeds it is made from. After Stelling & Duinmeijer 2003, Int. J. Numer. Meth. Fluids 43 (from memory).
 */
export function advect(flow: Flow, mesh: Mesh, dt: number): void {
  const { volume, speed, flux, area, areaBefore, advected } = flow;
  const { cells } = mesh;
  const { perPath } = mesh.tables;
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(cells - 1, flow.activeTo + 1);
  for (let j = first; j <= last; j++) {
    areaBefore[j] = area[j]!;
    const metal = (volume[j - 1]! + volume[j]!) / 2;
    const here = metal * perPath[j]!;
    area[j] = here;
    const u = speed[j]!;
    if (here < NO_METAL) {
      advected[j] = 0;
      continue;
    }
    const inLeft = (flux[j - 1]! + flux[j]!) / 2;
    const outRight = (flux[j]! + flux[j + 1]!) / 2;
    if (inLeft <= 0 && outRight >= 0) {
      advected[j] = u;
      continue;
    }
    const left = speed[j - 1]!;
    const right = speed[j + 1]!;
    const half = minmod(u - left, right - u) / 2;
    let change = 0;
    let low = u;
    let high = u;
    if (inLeft > 0) {
      const halfLeft = j > 1 ? minmod(left - speed[j - 2]!, u - left) / 2 : 0;
      if (outRight > 0) change += outRight * half;
      change -= inLeft * (left + halfLeft - u);
      if (left < low) low = left;
      else if (left > high) high = left;
    }
    if (outRight < 0) {
      const halfRight = j < cells - 1 ? minmod(right - u, speed[j + 2]! - right) / 2 : 0;
      change += outRight * (right - halfRight - u);
      if (inLeft < 0) change += inLeft * half;
      if (right < low) low = right;
      else if (right > high) high = right;
    }
    const next = u - (dt * change) / metal;
    advected[j] = next < low ? low : next > high ? high : next;
  }
}

function minmod(a: number, b: number): number {
  if (a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}
