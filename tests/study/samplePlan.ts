import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { withLimits } from '$src/cells/machineLimits';
import type { PourPlan } from '$src/core/pour/plan';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { sampleBook } from '../book/sample';

/** The plan of a pour of a book. */
export function planOf(book: Book, id: string): PourPlan {
  const evaluation = evaluateBook(book).get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${id} is ${evaluation?.state}`);
  return evaluation.plan;
}

/** The first pour of the sample book on a machine that can do all there is, on a mesh for quick tests. */
export function samplePlan(meshCells = 40): PourPlan {
  const book = sampleBook();
  const tilts = book.cells.filter(({ kind }) => kind === 'tilt').map(({ id }) => id);
  const plan = planOf(withLimits(book, tilts, WIDEST_LIMITS), 'pour-1');
  return { ...plan, computation: { ...plan.computation, meshCells, settlingTime: 1 } };
}
