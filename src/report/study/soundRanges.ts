import type { Margin } from './margins';
import type { NamedAxis } from './studyFile';

/** How far one setting may stray with the others as they are set, and the pour is still sound [unit of the axis]. */
export interface SoundRange {
  readonly name: string;
  readonly quantity: NamedAxis['quantity'];
  readonly from: number;
  readonly to: number;
  /** It was sound up to that end of what was looked at, so it may go on beyond. */
  readonly isOpenBelow: boolean;
  readonly isOpenAbove: boolean;
}

/** The ranges that margins of a sound set point come to, one for each axis; none before margins are known. */
export function soundRanges(axes: readonly NamedAxis[], margins: readonly Margin[] | null): SoundRange[] {
  return axes.flatMap(({ name, quantity }, index) => {
    const [below, above] = ([-1, 1] as const).map((way) =>
      margins?.find(({ axis, direction }) => axis === index && direction === way),
    );
    if (!below || !above) return [];
    return [
      {
        name,
        quantity,
        from: below.limit,
        to: above.limit,
        isOpenBelow: below.meets === null,
        isOpenAbove: above.meets === null,
      },
    ];
  });
}
