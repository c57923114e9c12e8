/** More digits than any figure of a pour is worth, and few enough that a sum of tenths reads as one. */
const DIGITS = 6;

/** A figure as files give it: to six digits, short where it is short; null stays null. */
export function inDigits(value: number): number;
export function inDigits(value: number | null): number | null;
export function inDigits(value: number | null): number | null {
  return value === null ? null : Number(value.toPrecision(DIGITS));
}
