import type { Mesh } from '$src/core/mesh/mesh';
import { keepDirection, keepTrial, moveTo, reduceCoupled, slopeAlong } from './coupledRows';
import type { Flow } from './flow';

/** Most need fewer than 8, and 42 were the most seen in four hundred thousand solves. */
const OUTER_CAP = 200;
/** Searches from where plain updates left the levels before all begins anew: from there it can take long. */
const RESTART_AFTER = 6;
const SEARCH_CAP = 60;
/** Share of the first slope that a search leaves. Less: looks for nothing, since the next step is a new one anyway. */
const FLAT_ENOUGH = 0.25;
/** Share of the stretch searched, at either end, that a look must lie off: nearer, the straight guess gains too little. */
const OFF_THE_END = 0.1;

/**
 * Level solve for when plain Newton cycles between cells that open and close, and for gas that is shut in. A cell holds no
 * less the higher its level stands, and a pocket of gas no more the higher its pressure, so the residuals are slopes of a
 * convex energy [m⁴] and what is sought is where that is lowest. Newton's direction leads down in it; each step ends where
 * the energy all but stops falling, so that none goes in a circle.
 * Source: Nocedal & Wright, Numerical Optimization, ch. 3 (Newton with a line search; from memory).
 * @param tolerance of the residuals [m³]
 * @param plain updates that go the whole way before any is searched
 * @returns false when it did not converge
 */
export function solveSearched(flow: Flow, mesh: Mesh, tolerance: number, plain: number): boolean {
  for (let outer = 0; outer < OUTER_CAP; outer++) {
    if (outer === plain + RESTART_AFTER) restart(flow);
    if (reduceCoupled(flow, mesh) <= tolerance) return true;
    flow.newtonIterations++;
    keepDirection(flow);
    keepTrial(flow);
    if (outer < plain) moveTo(flow, 1);
    else stepDown(flow, mesh);
  }
  return reduceCoupled(flow, mesh) <= tolerance;
}

/** Back to where the solve began. */
function restart({ level, before, gas }: Flow): void {
  level.set(before);
  gas?.pockets.rise.fill(0);
}

/** Moves the levels the whole way, or to where the slope of the energy has all but gone. */
function stepDown(flow: Flow, mesh: Mesh): void {
  let share = 1;
  let slope = slopeAt(flow, mesh, share);
  if (slope <= 0) return;
  let high = share;
  let slopeHigh = slope;
  let low = 0;
  let slopeLow = slopeAt(flow, mesh, low);
  const enough = FLAT_ENOUGH * Math.abs(slopeLow);
  for (let look = 0; look < SEARCH_CAP && Math.abs(slope) > enough; look++) {
    if (slope > 0) {
      high = share;
      slopeHigh = slope;
    } else {
      low = share;
      slopeLow = slope;
    }
    // In turn where a straight line through both slopes meets nothing, and the middle, so that no end stands still.
    const part = slopeLow / (slopeLow - slopeHigh);
    const isUseful = look % 2 === 0 && part > OFF_THE_END && part < 1 - OFF_THE_END;
    share = low + (isUseful ? part : 0.5) * (high - low);
    slope = slopeAt(flow, mesh, share);
  }
  moveTo(flow, share);
}

function slopeAt(flow: Flow, mesh: Mesh, share: number): number {
  moveTo(flow, share);
  return slopeAlong(flow, mesh);
}
