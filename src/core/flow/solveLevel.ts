import { levelOf, volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { moveLevels, reduceRows, settleLevels } from './levelSystem';
import { NEARLY_SOLVED, NEWTON_CAP, SOLVE_TOLERANCE, TRACE } from './settings';
import { solveSearched } from './solveSearched';

/** Updates of a solve with shut gas that are not searched: nearly all need no more. */
const PLAIN_UPDATES = 5;

/**
 * Solves V_i(level_i) + Σ coupling (level_i − level_neighbour) = target_i for all levels at once: Newton with a
 * tridiagonal Jacobian, and with a search along each of its steps when it cycles between cells that open and close.
 * @returns false when neither converged
 */
export function solveLevel(flow: Flow, mesh: Mesh, largestCell: number): boolean {
  const tolerance = SOLVE_TOLERANCE * largestCell;
  flow.before.set(flow.level);
  guessLevels(flow, mesh);
  const hasShutGas = flow.gas !== null && flow.gas.pockets.count > 0;
  if (!hasShutGas && newton(flow, mesh, tolerance)) {
    keepChange(flow);
    return true;
  }
  flow.change.fill(0);
  if (!hasShutGas) flow.searchedSolves++;
  return solveSearched(flow, mesh, tolerance, hasShutGas ? PLAIN_UPDATES : 0);
}

/**
 * Starts from where the levels would be if they moved as in the last step, which saves about one iteration. A
 * cell that metal only just enters starts from the level of what it is to hold: Newton halves towards a square
 * root, and would take twenty iterations from far off.
 */
function guessLevels(flow: Flow, mesh: Mesh): void {
  const { level, change, full, volume, marked, activeFrom, activeTo } = flow;
  const most = mesh.volume;
  let traces = 0;
  for (let i = activeFrom; i <= activeTo; i++) {
    if (volume[i]! < TRACE * most[i]!) marked[traces++] = i;
    else if (full[i] === 0) level[i] = level[i]! + change[i]!;
  }
  for (let k = 0; k < traces; k++) startTrace(flow, mesh, marked[k]!);
}

function startTrace({ level, levels, target }: Flow, mesh: Mesh, i: number): void {
  if (target[i]! > 0) level[i] = levelOf(levels, mesh, i, target[i]!);
}

function keepChange(flow: Flow): void {
  const { level, before, change } = flow;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) change[i] = level[i]! - before[i]!;
}

function newton(flow: Flow, mesh: Mesh, tolerance: number): boolean {
  const near = NEARLY_SOLVED * tolerance;
  for (let iteration = 0; iteration < NEWTON_CAP; iteration++) {
    const residual = reduceRows(flow, mesh);
    if (residual <= tolerance) return true;
    flow.newtonIterations++;
    if (residual > near) moveLevels(flow);
    else if (settleLevels(flow, tolerance)) return true;
  }
  return reduceRows(flow, mesh) <= tolerance;
}

/** Total residual of a set of levels, for tests [m³]. */
export function residualOf(flow: Flow, mesh: Mesh, i: number): number {
  const { level, coupling, target } = flow;
  let balance = volumeUnder(flow.levels, mesh, i, level[i]!) - target[i]!;
  if (i > 0) balance += coupling[i]! * (level[i]! - level[i - 1]!);
  if (i < mesh.cells - 1) balance += coupling[i + 1]! * (level[i]! - level[i + 1]!);
  return balance;
}
