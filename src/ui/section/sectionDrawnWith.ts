import type { ChargeValue, Evaluation } from '$src/cells/evaluate';
import type { Book, CellId, ChargeCell, SectionCell } from '$src/cells/kinds';
import type { Liquid } from '$src/core/metal/liquid';
import { liquidOf } from '$src/core/metal/liquidOf';
import { METALS } from '$src/core/metal/metals';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { endOf } from '$src/core/tilt/endOf';
import { fromDegrees } from '$src/core/units';
import { angleText } from '$src/report/wording';

/** The stroke and the metal a section is drawn with. */
export interface DrawnWith {
  /** The charge they come from; null = assumed, see `assumed`. */
  readonly charge: ChargeCell | null;
  /** The charge cell that should give them, whether it does or not. */
  readonly of: CellId | null;
  readonly start: number;
  readonly end: number;
  /** [m³] */
  readonly volume: number;
  /** Level from the lip at the start [m]; null when it is over the lip or unknown. */
  readonly fromLip: number | null;
  readonly liquid: Liquid;
  readonly metalName: string;
  /** What had to be assumed, in words; null when all comes from the charge. */
  readonly assumed: string | null;
}

const START = fromDegrees(30);
const END = fromDegrees(-90);
const SPARE = 1.15;

/** The charge cell a section is drawn with: the one it names, else the first that takes it. */
export function chargeOf(book: Book, cell: SectionCell): ChargeCell | null {
  const takers = book.cells.filter((c): c is ChargeCell => c.kind === 'charge' && c.section === cell.id);
  return takers.find((c) => c.id === cell.drawnWith) ?? takers[0] ?? null;
}

const chargeValueIn = (evaluation: Evaluation): ChargeValue | null =>
  'charge' in evaluation ? evaluation.charge : null;

/**
 * `section` is a good outline of the cell. `before` is what this returned last: while a charge gives no metal, for
 * instance because an outline is half typed, nothing that was known jumps to what would be assumed.
 */
export function drawnWith(
  book: Book,
  evaluationOf: (id: CellId) => Evaluation,
  cell: SectionCell,
  section: Section,
  before: DrawnWith | null = null,
): DrawnWith {
  const charge = chargeOf(book, cell);
  const value = charge ? chargeValueIn(evaluationOf(charge.id)) : null;
  const metalCell = book.cells.find((c) => c.id === charge?.metal);
  const metal = metalCell?.kind === 'metal' ? metalCell.metal : METALS[0]!;
  const known = { liquid: liquidOf(metal), metalName: metal.name };
  if (charge && value) {
    const { startInclination: start, endInclination: end, volume, fromLip } = value;
    return { ...known, charge, of: charge.id, start, end, volume, fromLip, assumed: null };
  }
  const own = {
    ...known,
    charge: null,
    of: charge?.id ?? null,
    fromLip: null,
    ...strokeOf(book, evaluationOf, charge),
  };
  const stroke = `from ${angleText(own.start)} to ${angleText(own.end)}`;
  if (charge && before?.of === charge.id) {
    const assumed = `${charge.name} gives no metal for this: drawn ${stroke} with as much as it gave last.`;
    return { ...own, volume: before.volume, assumed };
  }
  const why = charge ? `${charge.name} gives no metal yet` : 'No charge takes this section yet';
  const assumed = `${why}: drawn ${stroke} with 1.15 times the cavity of ${metal.name}.`;
  return { ...own, volume: SPARE * cavityVolume(section), assumed };
}

/** The stroke of the charge's tilt, as long as that is in order by itself; else one that most dies could have. */
function strokeOf(
  book: Book,
  evaluationOf: (id: CellId) => Evaluation,
  charge: ChargeCell | null,
): { start: number; end: number } {
  const cell = book.cells.find((c) => c.id === charge?.tilt);
  if (cell?.kind !== 'tilt' || evaluationOf(cell.id).state !== 'ready') return { start: START, end: END };
  return { start: cell.tilt.start, end: endOf(cell.tilt) };
}
