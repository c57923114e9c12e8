import { levenbergMarquardt } from 'ml-levenberg-marquardt';

/** A quantity to be found: positive, looked for between two bounds on a logarithmic scale. */
export interface Sought {
  readonly start: number;
  readonly least: number;
  readonly most: number;
}

export interface Found {
  readonly values: readonly number[];
  /** Standard deviation of each value, from the scatter about the fit; Infinity when nothing decides it. */
  readonly deviations: readonly number[];
  /** Root mean square of what is left. */
  readonly residual: number;
  readonly runs: number;
}

/** The library goes on to its last iteration however little it gains, so it is asked for a few at a time. */
const ITERATIONS = 4;
const MOST_ROUNDS = 8;
/** A round that gains less than this share of the squares is the last. */
const GAIN = 1e-3;
/** Step of the derivatives, on the logarithmic scale. */
const NUDGE = 1e-4;

/** What the model gives for these values, as many numbers as there are targets. */
export type Model = (values: readonly number[]) => ArrayLike<number>;

/** What makes the values less sure than readings that scatter each for itself would. */
export interface Doubts {
  /** How much alike the errors of two targets are, 1 on the diagonal; null = judged by what is left, see `runTogether`. */
  readonly likeness: ((i: number, j: number) => number) | null;
  /** What the model changes by, for each thing taken as known, when that is off by one standard deviation. */
  readonly offBy: (values: readonly number[], residual: number) => readonly ArrayLike<number>[];
}

/** Values for which the model comes closest to the targets (Levenberg and Marquardt), from one start. */
export function leastSquares(
  model: Model,
  targets: readonly number[],
  sought: readonly Sought[],
  doubts: Doubts | null = null,
): Found {
  let runs = 0;
  const at = (logs: readonly number[]): ArrayLike<number> => {
    runs += 1;
    return model(logs.map((log, k) => within(Math.exp(log), sought[k]!)));
  };
  const logs = settled(at, targets, sought);
  const values = logs.map((log, k) => within(Math.exp(log), sought[k]!));
  const left = differences(at(logs), targets);
  const residual = Math.sqrt(left.reduce((sum, one) => sum + one * one, 0) / targets.length);
  const spread = spreadOf(derivatives(at, logs, targets.length), left, doubts, () =>
    doubts ? doubts.offBy(values, residual) : [],
  );
  return {
    values,
    // Small steps of a logarithm are shares of the value.
    deviations: values.map((value, k) => value * Math.sqrt(spread[k]!)),
    residual,
    runs,
  };
}

type At = (logs: readonly number[]) => ArrayLike<number>;

function settled(at: At, targets: readonly number[], sought: readonly Sought[]): number[] {
  const data = { x: targets.map((_, i) => i), y: targets };
  const fixed = {
    minValues: sought.map(({ least }) => Math.log(least)),
    maxValues: sought.map(({ most }) => Math.log(most)),
    gradientDifference: NUDGE,
    damping: 1e-2,
    maxIterations: ITERATIONS,
  };
  const modelOf = (logs: number[]) => {
    const values = at(logs);
    return (i: number) => values[i]!;
  };
  let logs = sought.map((one) => Math.log(within(one.start, one)));
  let error = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = levenbergMarquardt(data, modelOf, { ...fixed, initialValues: logs });
    const gained = next.parameterError < error * (1 - GAIN);
    if (next.parameterError < error) logs = next.parameterValues;
    error = Math.min(error, next.parameterError);
    if (!gained) break;
  }
  return logs;
}

export const within = (value: number, { least, most }: Sought): number =>
  Math.min(Math.max(value, least), most);

/**
 * How many times fewer independent readings there are than readings, when each resembles the one before it, as smoothed
 * ones do: (1 + ρ)/(1 − ρ) with ρ from one to the next (first-order autoregression).
 */
function runTogether(left: readonly number[]): number {
  const squares = left.reduce((sum, one) => sum + one * one, 0);
  const products = left.slice(1).reduce((sum, one, i) => sum + one * left[i]!, 0);
  const likeness = Math.min(Math.max(squares > 0 ? products / squares : 0, 0), 0.9);
  return (1 + likeness) / (1 - likeness);
}

const differences = (values: ArrayLike<number>, targets: readonly number[]): number[] =>
  targets.map((target, i) => values[i]! - target);

/** How the model changes with the logarithm of each value, over a central step. */
function derivatives(at: At, logs: readonly number[], count: number): number[][] {
  return logs.map((_, k) => {
    const moved = (by: number) => at(logs.map((log, i) => (i === k ? log + by : log)));
    const [after, before] = [moved(10 * NUDGE), moved(-10 * NUDGE)];
    return Array.from({ length: count }, (_, i) => (after[i]! - before[i]!) / (20 * NUDGE));
  });
}

/**
 * Squares of the deviations of the logarithms, with N = (JᵀJ)⁻¹ and R the likeness of errors: s² N JᵀRJ N for the
 * scatter, where s² is what is left over the part of it that the fit has not followed, and (N Jᵀ d)² for each thing
 * that is off by d. Infinity where nothing depends on a value.
 */
function spreadOf(
  columns: readonly (readonly number[])[],
  left: readonly number[],
  doubts: Doubts | null,
  offBy: () => readonly ArrayLike<number>[],
): number[] {
  const dot = (a: readonly number[], b: ArrayLike<number>) => a.reduce((sum, one, i) => sum + one * b[i]!, 0);
  const normal = inverse(columns.map((a) => columns.map((b) => dot(a, b))));
  if (!normal) return columns.map(() => Number.POSITIVE_INFINITY);
  const likeness = doubts?.likeness ?? null;
  const spread = (column: readonly number[]) =>
    likeness ? column.map((_, i) => column.reduce((sum, one, j) => sum + likeness(i, j) * one, 0)) : column;
  const alike = columns.map((a) => columns.map((b) => dot(a, spread(b))));
  const followed = normal.reduce(
    (sum, row, i) =>
      sum +
      dot(
        row,
        alike.map((one) => one[i]!),
      ),
    0,
  );
  const scatter =
    (dot(left, left) / Math.max(1, left.length - followed)) * (likeness ? 1 : runTogether(left));
  const others = offBy().map((off) => columns.map((column) => dot(column, off)));
  return normal.map((row) => {
    const byScatter = row.reduce((sum, a, i) => sum + a * dot(row, alike[i]!), 0) * scatter;
    return others.reduce((sum, other) => sum + dot(row, other) ** 2, byScatter);
  });
}

/** Inverse of a small symmetric matrix by elimination; null when it has none. */
function inverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < n; k++) {
    const pivot = rows[k]![k]!;
    if (!(pivot > 1e-14 * matrix[k]![k]!)) return null;
    rows[k] = rows[k]!.map((value) => value / pivot);
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = rows[i]![k]!;
      rows[i] = rows[i]!.map((value, j) => value - factor * rows[k]![j]!);
    }
  }
  return rows.map((row) => row.slice(n));
}
