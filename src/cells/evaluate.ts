import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';
import type { Book, CellId } from './kinds';

/** What a charge cell comes to. */
export interface ChargeValue {
  /** [kg] */
  readonly mass: number;
  /** [m³] */
  readonly volume: number;
  /** Level at the start inclination relative to the lip [m], + above; null when the metal already covers the lip so that no level behind it exists. */
  readonly fromLip: number | null;
  /** Head above the mouth at the end inclination [m]; null when the metal ends below the mouth. */
  readonly head: number | null;
  readonly startInclination: number;
  readonly endInclination: number;
}

/**
 * What a cell comes to from its inputs alone. Nothing here runs the solver: a pour answers 'needs a run' with
 * its plan and hash, and the page or the command line looks for a record with that hash or makes one.
 */
export type Evaluation =
  | { readonly state: 'ready' }
  | { readonly state: 'ready'; readonly charge: ChargeValue }
  | { readonly state: 'wrong input'; readonly issues: readonly Issue[] }
  | { readonly state: 'blocked'; readonly by: readonly CellId[]; readonly reason: string }
  | { readonly state: 'needs a run'; readonly plan: PourPlan; readonly planHash: string };

export declare function evaluateBook(book: Book): ReadonlyMap<CellId, Evaluation>;
