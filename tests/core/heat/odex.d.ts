/** The little of odex that the tests use: Hairer's ODEX in JavaScript, an independent solver of y' = f(x, y). */
declare module 'odex' {
  export class Solver {
    constructor(n: number);
    absoluteTolerance: number;
    relativeTolerance: number;
    maxStepSize: number;
    solve(
      derivative: (x: number, y: number[]) => number[],
      x: number,
      start: number[],
      end: number,
    ): { y: number[]; outcome: number };
  }
}
