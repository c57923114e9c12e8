import { type Box, meet } from '$src/report/drawing/box';
import type { Plot, Spot } from '../charts/chart';
import { textWidth } from '../charts/labelRoom';

/** Where the name of a pour stands beside its cross [px]: start of its words, or their end. */
export interface NamePlace {
  readonly x: number;
  readonly y: number;
  readonly isLeft: boolean;
}

const HALF_MARK = 7;
const HEIGHT = 13;
const AWAY = { x: 11, above: -12, below: 22 } as const;

const markBox = ([x, y]: Spot): Box => ({
  left: x - HALF_MARK,
  right: x + HALF_MARK,
  top: y - HALF_MARK,
  bottom: y + HALF_MARK,
});

function nameBox({ x, y, isLeft }: NamePlace, wide: number): Box {
  const left = isLeft ? x - wide : x;
  return { left, right: left + wide, top: y - HEIGHT, bottom: y + 3 };
}

/**
 * Names beside the crosses of pours: each on the first side of its cross where it lies within the plot and on no mark and
 * no other name, else where it lies on the fewest. Below first, since what is read at the cursor stands above.
 */
export function placeNames(
  crosses: readonly { readonly name: string; readonly at: Spot }[],
  marks: readonly Spot[],
  plot: Plot,
): readonly NamePlace[] {
  const taken = [...marks.map(markBox), ...crosses.map(({ at }) => markBox(at))];
  return crosses.map(({ name, at: [x, y] }) => {
    const wide = textWidth(name) * 1.1;
    const places = [AWAY.below, AWAY.above].flatMap((away) =>
      [false, true].map((isLeft) => ({ x: isLeft ? x - AWAY.x : x + AWAY.x, y: y + away, isLeft })),
    );
    const scored = places.map((place) => ({ place, box: nameBox(place, wide) }));
    const cost = (box: Box): number =>
      taken.filter((other) => meet(other, box)).length + (isWithin(box, plot) ? 0 : 100);
    const best = scored.toSorted((a, b) => cost(a.box) - cost(b.box))[0]!;
    taken.push(best.box);
    return best.place;
  });
}

const isWithin = (box: Box, plot: Plot): boolean =>
  box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom;
