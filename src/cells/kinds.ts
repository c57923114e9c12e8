import type { DieCycle } from '$src/core/heat/dieCycle';
import type { Ladling } from '$src/core/heat/ladling';
import type { Metal } from '$src/core/metal/metal';
import type { Computation } from '$src/core/pour/plan';
import type { Section } from '$src/core/section/section';
import type { Tilt } from '$src/core/tilt/tilt';
import type { PageUnits } from '$src/core/units';
import type { CastingRow, CountedFault, PredictedFigure } from '$src/report/castings/casting';
import type { GuessAsk } from '$src/report/guess/ask';
import type { TeachersAnswers } from '$src/report/guess/teachersAnswers';
import type { StepBy } from '$src/report/step';
import type { Study } from '$src/report/study/study';
import type { Underlay } from './underlay';

export type CellId = string;

interface CellBase {
  readonly id: CellId;
  readonly name: string;
  /** Body folded away. */
  readonly folded: boolean;
  /** Its inputs are not to be changed: a teaching aid, not security. Absent = they may be. */
  readonly locked?: boolean;
}

/** Words between the cells. Markdown without HTML. */
export interface NoteCell extends CellBase {
  readonly kind: 'note';
  readonly text: string;
  /** The guess that it would give away: it is shown once that is given. Absent = it is shown at once. */
  readonly after?: CellId;
}

export interface SectionCell extends CellBase {
  readonly kind: 'section';
  readonly section: Section;
  /** The charge it is drawn with; null = the first charge that takes it. */
  readonly drawnWith: CellId | null;
  /** A picture to draw over; decides no run. */
  readonly underlay?: Underlay;
}

export interface MetalCell extends CellBase {
  readonly kind: 'metal';
  readonly metal: Metal;
}

/** How much metal: one of the three is given, the others follow. */
export type ChargeBy =
  /** [kg] */
  | { readonly by: 'mass'; readonly mass: number }
  /** Level at the start inclination, below (−) or above (+) the lip [m]. */
  | { readonly by: 'fill level'; readonly fromLip: number }
  /** Head above the mouth at the end inclination [m]. */
  | { readonly by: 'head'; readonly head: number };

export interface ChargeCell extends CellBase {
  readonly kind: 'charge';
  readonly section: CellId | null;
  readonly metal: CellId | null;
  /** Tilt whose start and end inclination the fill level and head are read at. */
  readonly tilt: CellId | null;
  readonly charge: ChargeBy;
  /** Ladling and the wait before the tilt; absent = the metal is at pouring temperature and none stays behind. */
  readonly ladling?: Ladling;
}

export interface TiltCell extends CellBase {
  readonly kind: 'tilt';
  readonly tilt: Tilt;
}

export interface PourCell extends CellBase {
  readonly kind: 'pour';
  readonly section: CellId | null;
  readonly metal: CellId | null;
  readonly charge: CellId | null;
  readonly tilt: CellId | null;
  readonly computation: Computation;
  /** Time the die stayed closed on castings that came out well [s]; absent = none proven. Decides no run. */
  readonly provenDwell?: number;
  /** The die poured again and again, to estimate how it warms. Decides no run. */
  readonly dieCycle?: DieCycle;
}

export interface CompareCell extends CellBase {
  readonly kind: 'compare';
  readonly pours: readonly CellId[];
  readonly stepBy: StepBy;
}

/** One or two settings of a pour over a range. */
export interface StudyCell extends CellBase {
  readonly kind: 'study';
  readonly pour: CellId | null;
  readonly study: Study;
}

/** Castings actually poured, good and bad, set against what was predicted. */
export interface CastingsCell extends CellBase {
  readonly kind: 'castings';
  readonly castings: readonly CastingRow[];
  readonly counted: CountedFault;
  readonly against: PredictedFigure;
}

/** A guess to be made before the result of its pours is shown. */
export interface GuessCell extends CellBase {
  readonly kind: 'guess';
  /** The pours it is about; one, or several to choose the quickest of; with the teacher's own answers any number. */
  readonly pours: readonly CellId[];
  readonly question: string;
  readonly ask: GuessAsk;
  /** What the teacher wrote for `own answers`; absent = nothing yet. Kept while something else is asked. */
  readonly own?: TeachersAnswers;
  /** Front speed as drawn, at equal steps from mouth to die end [m/s]; empty before anything is drawn. */
  readonly drawn: readonly number[];
  /** The choice picked; null before one is. */
  readonly picked: string | null;
  /** The guess stands, and the result may be seen. */
  readonly given: boolean;
  /** Results of its pours stay hidden until the guess is given. */
  readonly hides: boolean;
}

/** One printed page for the shop floor, made from a pour. */
export interface ShopCardCell extends CellBase {
  readonly kind: 'shop card';
  readonly pour: CellId | null;
  /** As the user writes it; nothing here knows what day it is. */
  readonly date: string;
  readonly remark: string;
}

export type Cell =
  | NoteCell
  | SectionCell
  | MetalCell
  | ChargeCell
  | TiltCell
  | PourCell
  | CompareCell
  | StudyCell
  | CastingsCell
  | GuessCell
  | ShopCardCell;
export type CellKind = Cell['kind'];

/** The saved document's content: an ordered list of cells. */
export interface Book {
  readonly title: string;
  /** What is being cast, e.g. "Hinge arm, A356". */
  readonly casting: string;
  /** What the page shows and is typed in; absent = millimetres, kilograms, degrees Celsius. Decides no figure. */
  readonly units?: PageUnits;
  readonly cells: readonly Cell[];
}
