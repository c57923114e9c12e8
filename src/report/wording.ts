import { toDegrees, toMillimetres } from '$src/core/units';

/**
 * Numbers as people read them: two or three significant figures, a true minus, inclination always signed.
 * Values come in SI; the words for a missing value are the caller's.
 */
export const MINUS = '\u2212';

const withTrueMinus = (text: string): string =>
  /^-[0.]*$/.test(text) ? text.slice(1) : text.replace('-', MINUS);

/** A number with `decimals` decimals; rounds to plain 0, never to a negative nought. */
export const fixed = (value: number, decimals: number): string => withTrueMinus(value.toFixed(decimals));

/** Would be written as noughts alone. */
const NOTHING = 5e-7;

/** Two significant figures below 10, whole numbers from there up to 1000, then three significant figures. */
export function significant(value: number): string {
  const size = Math.abs(value);
  if (size < NOTHING) return '0';
  if (size >= 1000) return withTrueMinus(String(Number(value.toPrecision(3))));
  if (size >= 9.95) return fixed(value, 0);
  return fixed(value, Math.min(6, Math.max(1, 1 - Math.floor(Math.log10(Number(size.toPrecision(2)))))));
}

/** An inclination that is in degrees already, always signed unless nought: "+24.5°". */
export function signedDegrees(degrees: number, decimals = 1): string {
  const text = fixed(degrees, decimals);
  return `${degrees > 0 && Number(text) !== 0 ? '+' : ''}${text}°`;
}

/** Inclination [rad] in degrees, signed in the same way. */
export const angleText = (inclination: number, decimals = 1): string =>
  signedDegrees(toDegrees(inclination), decimals);

/** Speed [m/s], two decimals: the limit itself is known to two. */
export const speedText = (speed: number): string => `${fixed(speed, 2)} m/s`;

/** A speed with the range it may lie in [m/s], under one unit. */
export const speedInRange = (
  speed: number,
  { from, to }: { readonly from: number; readonly to: number },
): string => `${fixed(speed, 2)} (${fixed(from, 2)} to ${fixed(to, 2)}) m/s`;

/** Tilt rate [rad/s], as fine as it is typed. */
export const rateText = (rate: number, decimals = 2): string =>
  `${fixed(toDegrees(rate), decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')} °/s`;

/** Time [s]: hundredths below ten seconds, tenths above. */
export const secondsNumber = (time: number): string => fixed(time, Math.abs(time) < 9.995 ? 2 : 1);
export const secondsText = (time: number): string => `${secondsNumber(time)} s`;

/** Length [m] in millimetres. */
export const lengthText = (length: number): string => `${significant(toMillimetres(length))} mm`;

/** Place [m] in whole millimetres. */
export const placeText = (place: number): string => `${fixed(toMillimetres(place), 0)} mm`;

/** Place [m from the mouth] in words: "40 mm from the mouth", "5 mm before the mouth" in the basin. */
export function fromMouthText(place: number): string {
  const size = placeText(Math.abs(place));
  if (size === placeText(0)) return 'at the mouth';
  return place < 0 ? `${size} before the mouth` : `${size} from the mouth`;
}

/** The same to go on with after a verb: "at 40 mm from the mouth", "5 mm before the mouth". */
const atMouthText = (place: number): string =>
  Math.round(toMillimetres(place)) > 0 ? `at ${fromMouthText(place)}` : fromMouthText(place);

/** Where in the die the front was quickest [m from the mouth], to go on with; empty where that is not known. */
export const peakPlaceText = (place: number | null): string =>
  place === null ? '' : ` ${atMouthText(place)}`;

/** A share 0 to 1 in whole per cent; "under 1" rather than a false 0, and 100 only when it is. */
export function percentNumber(share: number): string {
  if (share > 0 && share < 0.005) return 'under 1';
  if (share < 1 && share >= 0.995) return fixed(Math.floor(share * 100 * 10) / 10, 1);
  return fixed(share * 100, 0);
}
export const percentText = (share: number): string => `${percentNumber(share)} %`;

/** A name or value of a file may be as long as the file: a sentence names it by its beginning. */
export const beginningOf = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

/** A sentence begins so. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a, b and c". */
export function listText(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** "one fold", "3 folds": small counts in words, as one would say them. */
export function countText(count: number, one: string, many = `${one}s`): string {
  const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
  return `${words[count] ?? count} ${count === 1 ? one : many}`;
}
