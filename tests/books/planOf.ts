import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';

/** What a pour of a book comes to, on a mesh other than its own where the test names one. */
export function planOf(book: Book, pour: string, meshCells?: number): PourPlan {
  const evaluation = evaluateBook(book).get(pour);
  if (evaluation?.state !== 'needs a run') throw new Error(`${pour} is ${evaluation?.state}`);
  const { plan } = evaluation;
  return meshCells === undefined ? plan : { ...plan, computation: { ...plan.computation, meshCells } };
}

/** The same on the coarse mesh, which is what most claims of the books are held to. */
export const coarsePlanOf = (book: Book, pour: string): PourPlan => planOf(book, pour, PREVIEW_MESH_CELLS);
