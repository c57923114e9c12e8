import { FIGURES, levelOf, rotateLevels, Z4 } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { DRY_DEPTH, FULL_SHARE } from './settings';
import { raiseByGas } from './settleGas';

/**
 * Turns the body: storage and levels for the inclination at the end of the step, volumes kept.
 * A full cell keeps its head above its own highest point. Each loop is on its own and calls nothing: what a loop
 * might call keeps the engine from holding its arrays at hand.
 */
export function rotate(flow: Flow, mesh: Mesh, forces: Forces): void {
  setActive(flow, mesh, forces);
  const { activeFrom: from, activeTo: to } = flow;
  findFull(flow, mesh);
  rotateLevels(flow.levels, mesh, forces.sin, forces.cos, from, to);
  if (flow.gas) raiseByGas(flow, flow.gas);
  liftLevels(flow, mesh);
  limitSlopes(flow, mesh);
}

/** Depths, and full cells with their head above their highest point. */
function findFull({ volume, level, depth, full, levels, activeFrom, activeTo }: Flow, mesh: Mesh): void {
  const { perFootprint } = mesh.tables;
  const most = mesh.volume;
  for (let i = activeFrom; i <= activeTo; i++) {
    const metal = volume[i]!;
    const isFull = metal >= most[i]! * FULL_SHARE;
    full[i] = isFull ? 1 : 0;
    if (isFull) level[i] = level[i]! - levels[i * FIGURES + Z4]!;
    depth[i] = metal * perFootprint[i]!;
  }
}

function liftLevels({ volume, level, full, levels, activeFrom, activeTo }: Flow, mesh: Mesh): void {
  for (let i = activeFrom; i <= activeTo; i++)
    level[i] = full[i] ? level[i]! + levels[i * FIGURES + Z4]! : levelOf(levels, mesh, i, volume[i]!);
}

/** Dry cells kept active either side of the metal: it crosses half a cell a step at most. */
const MARGIN = 3;

/**
 * Bounds of the cells that hold metal or may in this step, and of those that did in the last, whose discharges
 * have still to come to rest. Ends that let metal in or out keep all cells active.
 */
function setActive(flow: Flow, mesh: Mesh, { conditions }: Forces): void {
  const last = mesh.cells - 1;
  let from = 0;
  let to = last;
  if (conditions.start.kind === 'closed' && conditions.end.kind === 'closed') {
    while (from < last && flow.volume[from]! <= 0) from++;
    while (to > from && flow.volume[to]! <= 0) to--;
    from = Math.max(0, from - MARGIN);
    to = Math.min(last, to + MARGIN);
  }
  flow.activeFrom = Math.min(from, flow.wetFrom);
  flow.activeTo = Math.max(to, flow.wetTo);
  flow.wetFrom = from;
  flow.wetTo = to;
}

/** Depth differences across cells: none at floor steps and beside dry cells, where they would hold the front. */
function limitSlopes(flow: Flow, mesh: Mesh): void {
  const { depth, depthSlope } = flow;
  const { step } = mesh;
  const { activeFrom: from, activeTo: to } = flow;
  depthSlope[from] = depthSlope[to] = 0;
  let before = 0;
  let here = depth[from]!;
  let after = from < to ? depth[from + 1]! : 0;
  let stepAfter = step[from + 1]!;
  for (let i = from + 1; i < to; i++) {
    before = here;
    here = after;
    after = depth[i + 1]!;
    const stepBefore = stepAfter;
    stepAfter = step[i + 1]!;
    if (stepBefore + stepAfter > 0 || before < DRY_DEPTH || here < DRY_DEPTH || after < DRY_DEPTH) {
      depthSlope[i] = 0;
      continue;
    }
    const a = here - before;
    const b = after - here;
    depthSlope[i] = a * b <= 0 ? 0 : Math.abs(a) < Math.abs(b) ? a : b;
  }
}
