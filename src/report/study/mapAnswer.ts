import type { FoldKind } from '$src/core/pour/record';
import { type Grid, gridOf } from './grid';
import { filledMap } from './refine';
import { foldsFilm, type PointResult, type Region, regionOf } from './region';
import { shortageOf } from './regionWords';
import type { NamedAxis } from './studyFile';

export type Results = ReadonlyMap<number, PointResult>;

/** What a study comes to, for picture and words: a map, or a curve, which has one row. */
export interface MapAnswer {
  readonly grid: Grid;
  readonly regions: readonly Region[];
  /** True where a pour was computed; elsewhere the region is taken from the nearest computed pour. */
  readonly isComputed: readonly boolean[];
  /** What the feeder lacks by the same pour; null where that is nothing or not told. */
  readonly shortages: readonly (string | null)[];
  /** The fold most points of the folding region have, null when none. */
  readonly mainFold: FoldKind | null;
}

export function mapAnswer(axes: readonly NamedAxis[], results: Results): MapAnswer | null {
  const grid = gridOf({ axes });
  const known = new Map([...results].map(([point, result]) => [point, regionOf(result)]));
  const filled = filledMap(grid, known);
  if (!filled) return null;
  return {
    grid,
    regions: filled.map(({ region }) => region),
    isComputed: filled.map(({ from }, point) => from === point),
    shortages: filled.map(({ from }) => shortageOf(results.get(from)!)),
    mainFold: mainFold(results),
  };
}

function mainFold(results: Results): FoldKind | null {
  const counts = new Map<FoldKind, number>();
  for (const result of results.values()) {
    if (!('figures' in result) || result.figures.cause === null || !foldsFilm(regionOf(result))) continue;
    counts.set(result.figures.cause, (counts.get(result.figures.cause) ?? 0) + 1);
  }
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** What of a study is meant, by number of a point. */
export type IsMeant = (point: number) => boolean;

/** Computed pours whose die fills and whose feeder cannot feed it, by number of the point. */
export const shortPoints = ({ shortages, isComputed }: MapAnswer): readonly number[] =>
  shortages.flatMap((shortage, point) => (shortage !== null && isComputed[point] ? [point] : []));

/** "Feeder short at 12 of the 30 sound or nearly sound pours computed"; empty where all are fed. For those who cannot see the map. */
export function shortCountWords(answer: MapAnswer): string {
  const short = shortPoints(answer).length;
  if (short === 0) return '';
  const judged = answer.regions.filter(
    (region, point) => answer.isComputed[point] && (region === 'sound' || region === 'near the limit'),
  );
  return ` The feeder is short at ${short === judged.length ? 'all' : short} of the ${judged.length} computed pours that are sound or near a limit.`;
}

/** How the points spread over the regions, largest first: for those who cannot see the map. */
export function regionCounts({ regions }: MapAnswer): readonly (readonly [Region, number])[] {
  const counts = new Map<Region, number>();
  for (const region of regions) counts.set(region, (counts.get(region) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1]);
}
