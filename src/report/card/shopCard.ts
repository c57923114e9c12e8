import type { PourRecord } from '$src/core/pour/record';
import type { PageUnits } from '$src/core/units';
import type { SoundFinding } from '../study/soundFinding';

/** All a card is made from. Nothing is computed again: the record is that of the pour as it stands, or is said to be old. */
export interface CardSource {
  readonly book: { readonly title: string; readonly casting: string };
  readonly card: { readonly name: string; readonly date: string; readonly remark: string };
  readonly pour: { readonly name: string; readonly section: string; readonly provenDwell: number | null };
  readonly metal: { readonly base: string; readonly name: string; readonly isOwn?: boolean };
  /** To be ladled, with what stays behind as skull and dross [kg]. */
  readonly mass: number;
  /** Of the metal as it is ladled [K]. */
  readonly ladleTemperature: number;
  readonly record: PourRecord;
  readonly units: PageUnits;
  /** How far settings may stray, as a study of this very pour has found it; or why that is not known. */
  readonly sound: SoundFinding;
  /** Why the card must not be used yet, e.g. that its pour is out of date; null when it may. */
  readonly warning: string | null;
  /** The pour as it now stands cannot be computed: what there is of it belongs to other inputs, and is not printed. */
  readonly isHindered?: boolean;
}

/** A setting to be read at arm's length. */
export interface CardSetting {
  readonly label: string;
  readonly number: string;
  readonly unit: string;
  readonly note: string;
  /** From the model, not from what was set. */
  readonly isModel: boolean;
}

/** One line of plain words. */
export interface CardLine {
  readonly label: string;
  readonly text: string;
  readonly isModel: boolean;
}

export interface CardTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What the rows leave out; may be empty. */
  readonly note: string;
}

/** What to look for, and where the die then lies. */
export interface CardWatch {
  readonly angle: string;
  readonly time: string;
  readonly text: string;
}

/** A shop card in words and numbers; the drawings come beside it. */
export interface ShopCard {
  readonly title: string;
  readonly warning: string | null;
  readonly head: readonly CardLine[];
  readonly settings: readonly CardSetting[];
  readonly coats: CardTable;
  readonly tilt: CardTable;
  readonly damper: readonly CardLine[];
  readonly expected: readonly CardLine[];
  readonly watch: readonly CardWatch[];
  readonly cautions: readonly string[];
  /** Who decides, below the cautions. */
  readonly deferral: string;
  readonly remark: string;
  readonly foot: readonly CardLine[];
}
