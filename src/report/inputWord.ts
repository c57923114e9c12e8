/** One input in words, with what decides it: two pours differ in it when `decides` differs. */
export interface InputWords {
  readonly name: string;
  readonly text: string;
  /** The raw values behind the words. */
  readonly decides: unknown;
  /**
   * The same with its places taken from the die end, and what it is then called: pours alike in it differ by the length
   * of the die alone, which is told by itself.
   */
  readonly fromEnd?: { readonly name: string; readonly decides: unknown };
  /** What it belongs to, for the line that says what is the same. */
  readonly group: 'section' | 'metal' | 'charge' | 'tilt' | 'heat' | 'computation';
  /** It decides what is advised or told of the pour, and not how the metal runs. */
  readonly isAside?: true;
  /** The words are as fine as an angle is set, a tenth of a degree: where they are alike, so is what was set. */
  readonly isToTenths?: true;
  /** Part of one choice, how the die is turned: its kind, pace, end and smoothing. Where it starts is another. */
  readonly isOfTilt?: true;
}

const equal = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * What keeps its distance to the mouth or to the end of a longer die differs by the length of the die, and by nothing of
 * its own: of several vents those before the place that gives way keep the one, those past it the other.
 */
export const isAlike = (one: InputWords, other: InputWords): boolean =>
  one.fromEnd && other.fromEnd
    ? keepsPlaces([one.decides, other.decides], [one.fromEnd.decides, other.fromEnd.decides])
    : equal(one.decides, other.decides);

type Two = readonly [unknown, unknown];

function keepsPlaces(fromMouth: Two, fromEnd: Two): boolean {
  if (equal(...fromMouth) || equal(...fromEnd)) return true;
  const [one, other, oneFromEnd, otherFromEnd] = [...fromMouth, ...fromEnd];
  return (
    Array.isArray(one) &&
    Array.isArray(other) &&
    one.length === other.length &&
    one.every((part, index) =>
      keepsPlaces(
        [part, other[index]],
        [(oneFromEnd as unknown[])[index], (otherFromEnd as unknown[])[index]],
      ),
    )
  );
}
