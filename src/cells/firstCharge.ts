import { basinCapacity } from '$src/core/level/basinCapacity';
import { fromMillimetres, METRIC } from '$src/core/units';
import { shortOfCavity } from '$src/report/shortCharge';
import { type ChargeValue, evaluateBook } from './evaluate';
import type { Book, ChargeBy, ChargeCell } from './kinds';
import { wholeLength } from './wholeLengths';

/** Heads that may feed a casting of this size [mm], the best first; common practice, no source. */
export const HEADS = [50, 40, 30, 20, 10];
/** Under the lip, where a basin that cannot hold such a charge is filled to. */
const BELOW_LIP = [-1, -5, -10];

/**
 * How a new charge begins: with a good head over the casting, or, in a basin that cannot hold so much or a tilt that
 * ends too early for one, filled to just under the lip. One that stands below the lip comes first, since the hand that
 * ladles can fill to a mark, and before all one that fills the die. Where nothing goes, the first of these, and the
 * cell says why.
 */
export function firstCharge(cell: Omit<ChargeCell, 'charge'>, book: Book): ChargeBy {
  const all = chargesFor(book);
  const held = all.flatMap((charge): Held[] => {
    const value = valueIn({ ...cell, charge }, book);
    return value === null ? [] : [{ charge, value }];
  });
  const isMarked = ({ value }: Held): boolean => value.startLevel.held !== null && value.startLevel.held <= 0;
  const filling = held.filter(({ value }) => fillsCavity(cell, value, book));
  const best = filling.find(isMarked) ?? filling[0] ?? held.find(isMarked) ?? held[0];
  return best?.charge ?? all[0]!;
}

interface Held {
  readonly charge: ChargeBy;
  readonly value: ChargeValue;
}

function fillsCavity(cell: Pick<ChargeCell, 'section'>, { volume }: ChargeValue, book: Book): boolean {
  const section = book.cells.find(({ id }) => id === cell.section);
  return section?.kind === 'section' && shortOfCavity(section.section, volume) === 0;
}

/** Whether a charge is the one that a cell takes before anything is known of its basin. */
export function isUnconsidered(charge: ChargeBy, book: Book): boolean {
  return JSON.stringify(charge) === JSON.stringify(chargesFor(book)[0]);
}

/** All that are tried, the most wanted first. */
function chargesFor(book: Book): ChargeBy[] {
  const unit = (book.units ?? METRIC).length;
  const whole = (millimetres: number): number => wholeLength(fromMillimetres(millimetres), unit);
  return [
    ...HEADS.map((head): ChargeBy => ({ by: 'head', head: whole(head) })),
    ...BELOW_LIP.map((level): ChargeBy => ({ by: 'fill level', fromLip: whole(level) })),
  ];
}

/** What the charge comes to; null where its cells cannot make it, or the basin cannot hold it before the tilt. */
function valueIn(cell: ChargeCell, book: Book): ChargeValue | null {
  const evaluation = evaluateBook({ ...book, cells: [...book.cells, cell] }).get(cell.id);
  if (evaluation?.state !== 'ready' || !('charge' in evaluation)) return null;
  const section = book.cells.find(({ id }) => id === cell.section);
  if (section?.kind !== 'section') return null;
  const { charge } = evaluation;
  return charge.volume <= basinCapacity(section.section, charge.startInclination) ? charge : null;
}
