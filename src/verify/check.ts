import type { Finding } from './finding';

/** How much is spent: `test` grades honestly in a second or so, `report` adds finer meshes and longer runs. */
export type Effort = 'test' | 'report';

/** One line of a plot: drawn as a line (exact) or as marks (computed). */
export interface Curve {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly look: 'line' | 'marks';
}

export interface Plot {
  /** File name without extension, below docs/figures/. */
  readonly name: string;
  readonly title: string;
  readonly xLabel: string;
  readonly yLabel: string;
  readonly curves: readonly Curve[];
}

export interface Outcome {
  readonly findings: readonly Finding[];
  readonly plots: readonly Plot[];
}

/** A known answer the solver is held to. The tests and the verification page run the very same function. */
export interface Check {
  readonly id: string;
  readonly title: string;
  /** Published source, or where the answer was worked out. */
  readonly source: string;
  /** What was computed, in a sentence: mesh, time, what is switched off. */
  readonly setting: string;
  run(effort: Effort): Outcome;
}

/** A family of checks with one heading on the verification page. */
export interface Family {
  readonly name: string;
  readonly about: string;
  readonly checks: readonly Check[];
}
