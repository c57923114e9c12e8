import type { Possible, Quantity } from './quantity';

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
/** A fraction as on a rule, alone or after whole ones: 3/8, 1 3/8, 1-3/8. */
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/;
/** One mark before just three digits, and no nought before it: it may part thousands as well as decimals. */
const GROUPED = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;
/** ¼, ½, ¾ and their like. */
const SMALL_FRACTION = /[\u00bc-\u00be\u2150-\u215e]/g;
/** What people write for a unit, and how it is written here. */
const WRITTEN: readonly (readonly [RegExp, string])[] = [
  [/(?:"|″|''|inch|inches)$/i, 'in'],
  [/\s*deg(?:rees?)?\b\.?\s*/i, ' °'],
  [/(\d)\s*([CF])$/i, '$1 °$2'],
  [/(?<=[\d/\s])(?:secs?|seconds?)$/i, 's'],
  [/mins?$|minutes?$/i, 'min'],
  [/lbs$/i, 'lb'],
  [/(m|in)\^?2$/i, '$1²'],
  [/(m|in)\^?3$/i, '$1³'],
];

/** What stands in a field: a value in SI, or the two numbers that it may be, in the unit it was typed in. */
export type Reading =
  | { readonly si: number }
  | { readonly either: readonly [thousands: number, decimals: number] };

function tidied(text: string): string {
  const plain = text
    .replace(SMALL_FRACTION, (small) => ` ${small.normalize('NFKC').replace('\u2044', '/')}`)
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/^([+-])\s+/, '$1')
    .trim();
  return WRITTEN.reduce((words, [written, ours]) => words.replace(written, ours), plain);
}

const packed = (text: string): string => text.replace(/\s/g, '');

function withoutUnit(text: string, unit: string): string | null {
  const end = packed(unit);
  if (end === '' || !packed(text).toLowerCase().endsWith(end.toLowerCase())) return null;
  const letters = [...end].map((letter) => letter.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return text.replace(new RegExp(`\\s*${letters.join('\\s*')}$`, 'i'), '');
}

function bareNumber(text: string): number | null {
  const fraction = FRACTION.exec(text.trim());
  if (fraction) {
    const [, sign, whole, over, under] = fraction;
    return finite((sign === '-' ? -1 : 1) * (Number(whole ?? 0) + Number(over) / Number(under)));
  }
  const pointed = packed(text).replace(',', '.');
  return NUMBER.test(pointed) ? finite(Number(pointed)) : null;
}

/** A key that is held down types a number beyond all numbers, and a book that holds one cannot be kept. */
const finite = (number: number): number | null => (Number.isFinite(number) ? number : null);

/**
 * Reads what a person typed: comma or point, a fraction, a true minus or a dash, the unit with it or not.
 * Gives the value in the unit shown; null when it is no number. A comma or point begins decimals.
 */
export function parseNumber(text: string, unit: string): number | null {
  const tidy = tidied(text);
  return bareNumber(withoutUnit(tidy, unit) ?? tidy);
}

/**
 * As `parseNumber`, in SI; a number with another unit of the same kind ("1 3/8 in" among millimetres) is read in that.
 *
 * "1,150" may be eleven hundred and fifty or a little more than one. Where only one of the two is `possible`, that is
 * meant; where both are or neither is, a comma is asked about, and a point, the page's own mark, begins decimals.
 */
export function readQuantity(
  text: string,
  quantity: Quantity,
  possible: Possible = quantity.possible,
): Reading | null {
  const tidy = tidied(text);
  for (const { unit, fromShown } of [quantity, ...quantity.others]) {
    const bare = withoutUnit(tidy, unit) ?? (unit === quantity.unit ? tidy : '');
    const decimals = bareNumber(bare);
    if (decimals === null) continue;
    const meant = meantBy(packed(bare), decimals, (number) =>
      isPossible(fromShown(number), quantity, possible),
    );
    if (typeof meant !== 'number') return { either: meant };
    const si = finite(fromShown(meant));
    return si === null ? null : { si };
  }
  return null;
}

/** The value alone; null also where it may be either of two. */
export function parseQuantity(text: string, quantity: Quantity, possible?: Possible): number | null {
  const reading = readQuantity(text, quantity, possible);
  return reading && 'si' in reading ? reading.si : null;
}

function meantBy(
  bare: string,
  decimals: number,
  isPossible: (number: number) => boolean,
): number | [number, number] {
  if (!GROUPED.test(bare)) return decimals;
  const thousands = Number(bare.replace(/[.,]/, ''));
  if (isPossible(decimals) !== isPossible(thousands)) return isPossible(decimals) ? decimals : thousands;
  return bare.includes(',') ? [thousands, decimals] : decimals;
}

/** Of what is counted a part is never meant: with three decimals it is thousands. */
function isPossible(si: number, { whole }: Quantity, [least, most]: Possible): boolean {
  // A hair of room, since a limit typed in another unit comes back with round-off.
  const room = 1e-9 * Math.abs(si);
  return si >= least - room && si <= most + room && (!whole || si >= 1000);
}
