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

/** Values for which the model comes closest to the targets (Levenberg and Marquardt), from one start. */
export function leastSquares(model: Model, targets: readonly number[], sought: readonly Sought[]): Found {
  let runs = 0;
  const at = (logs: readonly number[]): ArrayLike<number> => {
    runs += 1;
    return model(logs.map((log, k) => within(Math.exp(log), sought[k]!)));
  };
  const parameterValues = settled(at, targets, sought);
  const values = parameterValues.map((log, k) => within(Math.exp(log), sought[k]!));
  const left = differences(at(parameterValues), targets);
  const squares = left.reduce((sum, one) => sum + one * one, 0);
  const scatter = (squares / Math.max(1, targets.length - sought.length)) * runTogether(left);
  const spread = covariance(at, parameterValues, targets.length);
  return {
    values,
    // Small steps of a logarithm are shares of the value.
    deviations: values.map((value, k) => value * Math.sqrt(scatter * spread[k]![k]!)),
    residual: Math.sqrt(squares / targets.length),
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

const within = (value: number, { least, most }: Sought): number => Math.min(Math.max(value, least), most);

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

/** (JᵀJ)⁻¹ at the solution, derivatives over a central step; Infinity on the diagonal where nothing depends on a value. */
function covariance(at: At, logs: readonly number[], count: number): number[][] {
  const columns = logs.map((_, k) => {
    const moved = (by: number) => at(logs.map((log, i) => (i === k ? log + by : log)));
    const [after, before] = [moved(10 * NUDGE), moved(-10 * NUDGE)];
    return Array.from({ length: count }, (_, i) => (after[i]! - before[i]!) / (20 * NUDGE));
  });
  const normal = columns.map((a) => columns.map((b) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)));
  return inverse(normal) ?? normal.map((row) => row.map(() => Number.POSITIVE_INFINITY));
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
