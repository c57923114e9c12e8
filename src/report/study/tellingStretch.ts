import { axisIndex } from './grid';
import type { IsMeant, MapAnswer } from './mapAnswer';
import type { NamedAxis } from './studyFile';

/** Points of one row, side by side, from one column to another. */
export interface Stretch {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

/** The stretches of what is meant along each row. */
function stretchesOf({ grid }: MapAnswer, isMeant: IsMeant): Stretch[] {
  const found: Stretch[] = [];
  for (let row = 0; row < grid.rows; row++) {
    let from: number | null = null;
    for (let column = 0; column <= grid.columns; column++) {
      if (column < grid.columns && isMeant(column + row * grid.columns)) from ??= column;
      else if (from !== null) {
        found.push({ row, from, to: column - 1 });
        from = null;
      }
    }
  }
  return found;
}

/** A share of the rows of a map: as near as that to what is set, a row is as good as its own. Ours. */
const NEAR_ROWS = 0.1;

export interface Telling {
  readonly stretch: Stretch;
  /** It lies in another row, further from what is set than what is near. */
  readonly isElsewhere: boolean;
}

/**
 * The stretch the set point lies in, else the longest of the nearest row that has one, and only where none is near the
 * longest of all: what one would tell the next shift, who have the die as it is.
 */
export function tellingStretch(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  isMeant: IsMeant,
): Telling | null {
  const stretches = stretchesOf(answer, isMeant);
  const [column, row = 0] = axes.map((axis) =>
    axis.setPoint === null ? -1 : Math.round(axisIndex(axis, axis.setPoint)),
  );
  const own = stretches.find((one) => one.row === row && one.from <= column! && column! <= one.to);
  if (own) return { stretch: own, isElsewhere: false };
  const longest = stretches.toSorted((a, b) => b.to - b.from - (a.to - a.from));
  const reach = Math.max(1, Math.round(NEAR_ROWS * (answer.grid.rows - 1)));
  const away = (one: Stretch): number => Math.abs(one.row - row);
  const [near] = longest.filter((one) => away(one) <= reach).toSorted((a, b) => away(a) - away(b));
  if (near) return { stretch: near, isElsewhere: false };
  const [stretch] = longest;
  return stretch ? { stretch, isElsewhere: axes.every(({ setPoint }) => setPoint !== null) } : null;
}
