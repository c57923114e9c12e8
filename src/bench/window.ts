import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { readBook } from '$src/book/readBook';
import { type ChosenStudy, chooseStudy } from '$src/cli/chooseStudy';
import { computeEach } from '$src/cli/computeEach';
import { fromMilliseconds } from '$src/core/units';
import { coarsePoints, type Grid, gridOf, valuesAt } from '$src/report/study/grid';
import { pointAt } from '$src/report/study/pointAt';
import { pointResult } from '$src/report/study/pointFigures';
import { filledMap, pointsWanted } from '$src/report/study/refine';
import { type PointResult, type Region, regionOf } from '$src/report/study/region';

/**
 * Speed of the pour window of an example book: the first look, then the edges, as the page computes them, and every
 * point by brute force to see how many of the points in between were told rightly.
 */

const BOOK = 'static/pour-window.pourbook.json';
const STUDY = 'Pour window of the wall';

function windowOf(path: string): ChosenStudy {
  const read = readBook(readFileSync(path, 'utf8'));
  if (!('book' in read)) throw new Error(`${path} cannot be read.`);
  const chosen = chooseStudy(read.book, STUDY);
  if (!('plan' in chosen)) throw new Error(`${path} has no one study that can be computed.`);
  return chosen;
}

/** Regions of these points, computed on all cores; what is no pour at all costs nothing. */
async function regionsAt({ plan }: ChosenStudy, grid: Grid, points: readonly number[]): Promise<Region[]> {
  const asked = points.map((point) => pointAt(plan, valuesAt(grid, point)));
  const plans = asked.flatMap((at) => ('plan' in at ? [at.plan] : []));
  const results = await computeEach<PointResult>(plans, {
    record: pointResult,
    refused: (failed) => ({ failed }),
  });
  const next = results.values();
  return asked.map((at) => regionOf('plan' in at ? next.next().value! : at));
}

const secondsSince = (begun: number): string => fromMilliseconds(performance.now() - begun).toFixed(1);

export async function benchWindow(): Promise<void> {
  const study = windowOf(BOOK);
  const axes = study.head.axes.map((axis) => ({ ...axis, points: 20 }));
  const grid = gridOf({ axes });
  const first = coarsePoints(grid).length;
  const known = new Map<number, Region>();
  console.log(
    `\nPour window of 20 × 20 points, ${study.head.meshCells} mesh cells, ${availableParallelism()} cores (seconds by the clock)`,
  );
  const begun = performance.now();
  for (let wave = pointsWanted(grid, known); wave.length > 0; wave = pointsWanted(grid, known)) {
    const isFirst = known.size === 0;
    const regions = await regionsAt(study, grid, wave);
    for (const [index, point] of wave.entries()) known.set(point, regions[index]!);
    if (isFirst) console.log(`  first map, ${first} points   ${secondsSince(begun)} s`);
  }
  console.log(`  edges followed, ${known.size} points   ${secondsSince(begun)} s`);
  const filled = filledMap(grid, known)!;
  const rest = filled.flatMap((_, point) => (known.has(point) ? [] : [point]));
  const truth = await regionsAt(study, grid, rest);
  const right = truth.filter((region, index) => region === filled[rest[index]!]!.region).length;
  const share = (100 * (known.size + right)) / grid.count;
  console.log(
    `  every point by brute force ${secondsSince(begun)} s in all; ${share.toFixed(1)} % of the map was told rightly`,
  );
}
