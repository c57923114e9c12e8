import { type CaseRun, cellMean } from './caseRun';

/** Middle of mesh cell i along the axis [m]. */
export const centre = (run: CaseRun, i: number): number => (run.mesh.x[i]! + run.mesh.x[i + 1]!) / 2;

export const centres = (run: CaseRun): number[] =>
  Array.from({ length: run.mesh.cells }, (_, i) => centre(run, i));

/** Relative L1 error of the depth against an exact depth, cell means on both sides. */
export function depthError(
  run: CaseRun,
  exact: (x: number) => number,
  from = -Infinity,
  to = Infinity,
): number {
  let off = 0;
  let total = 0;
  for (let i = 0; i < run.mesh.cells; i++) {
    const x = centre(run, i);
    if (x < from || x > to) continue;
    const wanted = cellMean(run.mesh, i, exact);
    const length = run.mesh.x[i + 1]! - run.mesh.x[i]!;
    off += Math.abs(run.flow.depth[i]! - wanted) * length;
    total += Math.abs(wanted) * length;
  }
  return off / total;
}

/** Refreshes the mean depths from the volumes (the step does it at its start only). */
export function settleDepths(run: CaseRun): void {
  const { flow, mesh } = run;
  for (let i = 0; i < mesh.cells; i++)
    flow.depth[i] = flow.volume[i]! / (mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!));
}

/** Foremost place where the depth passes `threshold` [m], linear between cell centres. */
export function placeOfDepth(run: CaseRun, threshold: number): number {
  const { depth } = run.flow;
  for (let i = run.mesh.cells - 1; i >= 0; i--) {
    if (depth[i]! < threshold) continue;
    if (i === run.mesh.cells - 1) return run.mesh.x[i + 1]!;
    const share = (depth[i]! - threshold) / (depth[i]! - depth[i + 1]!);
    return centre(run, i) + share * (centre(run, i + 1) - centre(run, i));
  }
  return run.mesh.x[0]!;
}

export function greatestSpeed(run: CaseRun): number {
  return run.flow.speed.reduce((most, u) => Math.max(most, Math.abs(u)), 0);
}

/** Observed order between two errors on meshes a factor of two apart. */
export const orderOf = (coarse: number, fine: number): number => Math.log2(coarse / fine);

/** Slope of log(error) against log(1/cells) by least squares. */
export function fittedOrder(cells: readonly number[], errors: readonly number[]): number {
  const x = cells.map((n) => Math.log(n));
  const y = errors.map((e) => -Math.log(e));
  const meanX = mean(x);
  const meanY = mean(y);
  const top = x.reduce((sum, value, k) => sum + (value - meanX) * (y[k]! - meanY), 0);
  return top / x.reduce((sum, value) => sum + (value - meanX) ** 2, 0);
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Root of a function that changes sign between low and high, by bisection: to the last bit, or as often as `halvings`. */
export function rootBetween(low: number, high: number, value: (x: number) => number, halvings = 200): number {
  const rising = value(high) > 0;
  let a = low;
  let b = high;
  for (let k = 0; k < halvings; k++) {
    const middle = (a + b) / 2;
    if (middle === a || middle === b) break;
    if (value(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
