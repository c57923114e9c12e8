import { fromMillimetres, toMillimetres } from '$src/core/units';

/** A hair, so that a level that is a whole tenth stays the one it is. */
const HAIR = 1e-6;

/** The lowest and the highest tenth of a millimetre that lie between two fill levels [m]; null when none does. */
export function wholeTenthsIn([lowest, highest]: readonly [number, number]):
  | readonly [number, number]
  | null {
  const least = Math.floor(10 * toMillimetres(lowest) + HAIR) + 1;
  const most = Math.floor(10 * toMillimetres(highest) + HAIR);
  return least > most ? null : [fromMillimetres(least / 10), fromMillimetres(most / 10)];
}
