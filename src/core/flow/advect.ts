import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { NO_METAL } from './settings';

/**
 * Carries momentum: u* = u − dt (divergence of momentum − u × divergence of mass)/(A Δs), upwind with limited
 * slopes, with the discharges of the last step and the areas of now, so momentum is conserved across bores.
 * Clipped to the speeds it is made from. After Stelling & Duinmeijer 2003, Int. J. Numer. Meth. Fluids 43 (from memory).
 *
 * What passes a face is taken in the middle of the step (`midStep`): as it is at the beginning, with slopes, long fast
 * streams ripple by a hundredth or more of their discharge and never settle.
 */
export function advect(flow: Flow, mesh: Mesh, dt: number): void {
  const { volume, speed, speedBefore, flux, area, areaBefore, advected } = flow;
  const { cells } = mesh;
  const { perPath } = mesh.tables;
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(cells - 1, flow.activeTo + 1);
  // The face, its two neighbours on either side and the metal about it move along: each is read once.
  let farLeft = 0;
  let left = first > 1 ? speed[first - 2]! : 0;
  let u = speed[first - 1]!;
  let right = speed[first]!;
  let farRight = speed[first + 1]!;
  let passesRight = (flux[first - 1]! + flux[first]!) / 2;
  let throughRight = flux[first]!;
  let metalRight = volume[first - 1]!;
  let metal = first > 1 ? (volume[first - 2]! + metalRight) / 2 : metalRight;
  let wasLeft = 0;
  let was = speedBefore[first - 1]!;
  let wasRight = speedBefore[first]!;
  for (let j = first; j <= last; j++) {
    farLeft = left;
    left = u;
    u = right;
    right = farRight;
    farRight = j + 2 <= cells ? speed[j + 2]! : 0;
    wasLeft = was;
    was = wasRight;
    wasRight = speedBefore[j + 1]!;
    speedBefore[j] = u;
    const inLeft = passesRight;
    const through = throughRight;
    throughRight = flux[j + 1]!;
    passesRight = (through + throughRight) / 2;
    const outRight = passesRight;
    const metalLeft = metalRight;
    metalRight = volume[j]!;
    areaBefore[j] = area[j]!;
    const metalBefore = metal;
    metal = (metalLeft + metalRight) / 2;
    const here = metal * perPath[j]!;
    area[j] = here;
    if (here < NO_METAL) {
      advected[j] = 0;
      continue;
    }
    if (inLeft <= 0 && outRight >= 0) {
      advected[j] = u;
      continue;
    }
    const half = minmod(u - left, right - u) / 2;
    let change = 0;
    let low = u;
    let high = u;
    if (inLeft > 0) {
      const halfLeft = j > 1 ? minmod(left - farLeft, u - left) / 2 : 0;
      if (outRight > 0) change += outRight * midStep(half, u - was, outRight * dt, metal);
      change -= inLeft * (left + midStep(halfLeft, left - wasLeft, inLeft * dt, metalBefore) - u);
      if (left < low) low = left;
      else if (left > high) high = left;
    }
    if (outRight < 0) {
      const halfRight = j < cells - 1 ? minmod(right - u, farRight - right) / 2 : 0;
      const metalAfter = j + 1 < cells ? (metalRight + volume[j + 1]!) / 2 : metalRight;
      change += outRight * (right + midStep(-halfRight, right - wasRight, -outRight * dt, metalAfter) - u);
      if (inLeft < 0) change -= inLeft * midStep(-half, u - was, -inLeft * dt, metal);
      if (right < low) low = right;
      else if (right > high) high = right;
    }
    const next = u - (dt * change) / metal;
    advected[j] = next < low ? low : next > high ? high : next;
  }
  speedBefore[first - 1] = speed[first - 1]!;
  speedBefore[last + 1] = speed[last + 1]!;
}

/**
 * From the speed of a face to that which passes on its lee side in the middle of the step: half a slope, less what is
 * carried past meanwhile (the term of Lax and Wendroff), of this no more than the speed changed by in the last step.
 * A steady stream keeps the whole slope and its second order. `carried` [m³] of the `metal` [m³] about the face passes.
 */
function midStep(half: number, changed: number, carried: number, metal: number): number {
  if (half === 0) return 0;
  const whole = carried < metal ? (-half * carried) / metal : -half;
  return half + minmod(changed / 2, whole);
}

function minmod(a: number, b: number): number {
  if (a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}
