import { coarsePoints, type Grid, neighbours, placeOf } from './grid';
import type { Region } from './region';

/** What is known of each point, by number. */
export type KnownRegions = ReadonlyMap<number, Region>;

/** Region of every point; `from` is the computed point it is taken from, the point itself where it was computed. */
export interface FilledPoint {
  readonly region: Region;
  readonly from: number;
}

/** Every point with the region of the nearest computed one; null while nothing is computed. Of equally near ones the lowest number counts. */
export function filledMap(grid: Grid, known: KnownRegions): readonly FilledPoint[] | null {
  if (known.size === 0) return null;
  const computed = [...known.keys()].sort((a, b) => a - b);
  return Array.from({ length: grid.count }, (_, point) => {
    const from = known.has(point) ? point : nearest(grid, computed, point);
    return { region: known.get(from)!, from };
  });
}

/** Nearness is counted in shares of the whole axis, so that a long grid is not favoured along its length. */
function nearest(grid: Grid, computed: readonly number[], point: number): number {
  const [column, row] = placeOf(grid, point);
  const [wide, high] = [Math.max(1, grid.columns - 1), Math.max(1, grid.rows - 1)];
  let best = computed[0]!;
  let shortest = Number.POSITIVE_INFINITY;
  for (const one of computed) {
    const [c, r] = placeOf(grid, one);
    const distance = ((c - column) / wide) ** 2 + ((r - row) / high) ** 2;
    if (distance < shortest - 1e-12) [best, shortest] = [one, distance];
  }
  return best;
}

/**
 * The points to compute next; empty when the study is done. First a coarse look over the whole; then, wave by wave,
 * every point with a neighbour in another region, until both sides of every edge are computed. What is left lies
 * inside one region and takes the nearest answer. A curve is computed at all its points.
 */
export function pointsWanted(grid: Grid, known: KnownRegions): number[] {
  const coarse = coarsePoints(grid).filter((point) => !known.has(point));
  if (coarse.length > 0) return coarse;
  const rest = Array.from({ length: grid.count }, (_, point) => point).filter((point) => !known.has(point));
  if (grid.rows === 1 || grid.columns === 1) return rest;
  const filled = filledMap(grid, known)!;
  return rest.filter((point) =>
    neighbours(grid, point).some((one) => filled[one]!.region !== filled[point]!.region),
  );
}
