import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { flushBasin } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { sampleBook } from '../../book/sample';

/** A brimful flush basin tilted so quickly that metal shuts the mouth. */
function quickPlan(meshCells: number): PourPlan {
  const cells = sampleBook().cells.map((cell): Cell => {
    if (cell.kind === 'section') return { ...cell, section: flushBasin() };
    if (cell.kind === 'charge') return { ...cell, charge: { by: 'fill level', fromLip: 0 } };
    if (cell.kind !== 'tilt' || cell.tilt.kind !== 'steady') return cell;
    return { ...cell, tilt: { ...cell.tilt, rate: fromDegrees(20) } };
  });
  const book: Book = { ...sampleBook(), cells };
  const evaluation = evaluateBook(book).get('pour-1');
  if (evaluation?.state !== 'needs a run') throw new Error(`The pour is ${evaluation?.state}.`);
  const computation = { ...evaluation.plan.computation, meshCells, settlingTime: 1 };
  return { ...evaluation.plan, computation };
}

function poured(meshCells: number, finer: number): PourRecord {
  const pour = runPour(quickPlan(meshCells), finer);
  let step = pour.next();
  while (!step.done) step = pour.next();
  return step.value;
}

// Source: a converged figure does not depend on the step; no published case of gas shut in by a turning die is known to us.
// When the mouth shuts for good hangs on a slosh: on 100 to 400 cells, with steps of 1 to 0.1 ms, the die ends 60 to 69 %
// full. That gas is held does not hang on it.
describe('gas that metal shuts in', () => {
  const pours = [
    [100, 1],
    [100, 2.5],
    [200, 1],
    [200, 4],
  ].map(([meshCells, finer]) => poured(meshCells!, finer!));

  it('is held whatever the step and the mesh', () => {
    for (const { figures, outcome } of pours) {
      expect(outcome.kind).toBe('out of time');
      expect(figures.gasHeld).toBe(true);
      expect(figures.finalShare).toBeGreaterThan(0.55);
      expect(figures.finalShare).toBeLessThan(0.75);
    }
  });

  it('is met with: the case says something', () => {
    for (const { folds } of pours) expect(folds.map(({ kind }) => kind)).toContain('gas sealed in');
  });
});
