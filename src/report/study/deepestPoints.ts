import { placeOf } from './grid';
import type { IsMeant, MapAnswer } from './mapAnswer';

/**
 * Points of what is meant, the deepest first: those with the most room between them and what is not, where a name can
 * stand. The sides of the map count as somewhat further away than they are.
 */
export function deepestPoints({ grid, regions }: MapAnswer, isMeant: IsMeant): readonly number[] {
  const others = regions.flatMap((_, point) => (isMeant(point) ? [] : [placeOf(grid, point)]));
  const depthOf = (point: number): number => {
    const [column, row] = placeOf(grid, point);
    const toSide = Math.min(column + 1, grid.columns - column) * 1.2;
    const toEnd = Math.min(row + 1, grid.rows - row) * 1.2;
    return others.reduce(
      (least, [c, r]) => Math.min(least, Math.hypot(c - column, r - row)),
      Math.min(toSide, toEnd),
    );
  };
  return regions
    .flatMap((_, point) => (isMeant(point) ? [{ point, depth: depthOf(point) }] : []))
    .toSorted((a, b) => b.depth - a.depth)
    .map(({ point }) => point);
}
