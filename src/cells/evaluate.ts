import type { Issue } from '$src/core/issue';
import type { StartLevel } from '$src/core/level/startLevel';
import type { LadledMetal } from '$src/core/pour/ladledMetal';
import type { PourPlan } from '$src/core/pour/plan';
import { evaluateCell } from './evaluateCell';
import type { Book, CellId } from './kinds';
import { inOrder } from './needs';

/** What a charge cell comes to. */
export interface ChargeValue {
  /** To be ladled, skull and dross with it [kg]. */
  readonly mass: number;
  /** That can leave the basin [m³]. */
  readonly volume: number;
  /** Dead level at the start inclination relative to the lip [m], + above; null when the metal already covers the lip so that no level behind it exists. */
  readonly fromLip: number | null;
  /** Where it stands at the start as its skin holds it, beside that dead level. Worked out when it is asked for. */
  readonly startLevel: StartLevel;
  /** Head above the mouth at the end inclination [m]; null when the metal ends below the mouth. Worked out when it is asked for. */
  readonly head: number | null;
  /** Metal that leaves over a rim on the way to the end, lying level at each inclination [m³]. Worked out when it is asked for. */
  readonly spilled: number;
  readonly startInclination: number;
  readonly endInclination: number;
  /** What ladling and the wait did to it; null when they are not counted. */
  readonly ladled: LadledMetal | null;
}

/**
 * What a cell comes to from its inputs alone. Nothing here runs the solver: a pour answers 'needs a run' with
 * its plan and hash, and the page or the command line looks for a record with that hash or makes one.
 *
 * Paths of issues are relative to what the cell holds: to the section, metal or tilt in a cell of that kind
 * (`roof.4.y`, `density.value`, `stages.1.to`), and to the cell itself in a charge, pour or compare
 * (`charge.mass`, `section`, `computation.meshCells`, `pours.1`).
 */
export type Evaluation =
  | { readonly state: 'ready' }
  | { readonly state: 'ready'; readonly charge: ChargeValue }
  | { readonly state: 'wrong input'; readonly issues: readonly Issue[] }
  | { readonly state: 'blocked'; readonly by: readonly CellId[]; readonly reason: string }
  | { readonly state: 'needs a run'; readonly plan: PourPlan; readonly planHash: string };

/**
 * What every cell of the book comes to. Cheap to call after each change: a cell whose inputs are the same objects as
 * before gives the same evaluation object as before, and nothing is worked out for it again.
 */
export function evaluateBook(book: Book): ReadonlyMap<CellId, Evaluation> {
  const evaluations = new Map<CellId, Evaluation>();
  const cells = new Map(book.cells.map((cell) => [cell.id, cell]));
  for (const cell of inOrder(book)) {
    evaluations.set(cell.id, evaluateCell(cell, { cells, evaluations }));
  }
  return evaluations;
}
