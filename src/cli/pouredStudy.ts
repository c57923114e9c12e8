import { gridOf, valuesAt } from '$src/report/study/grid';
import { mapAnswer } from '$src/report/study/mapAnswer';
import { marginsWithin } from '$src/report/study/mapLine';
import { beyondMachine, marginsOf } from '$src/report/study/margins';
import type { SettingValues } from '$src/report/study/planAt';
import { pointAt } from '$src/report/study/pointAt';
import { pointsWanted } from '$src/report/study/refine';
import { type PointResult, type Region, regionOf } from '$src/report/study/region';
import { spreadsOf } from '$src/report/study/repeatSpread';
import type { KnownStudy } from '$src/report/study/soundOfPour';
import type { ChosenStudy } from './chooseStudy';
import type { PourPool } from './pourPool';

/** What a study says of the pour it varies, as on the page: the lines through the setting, no further than its map shows. Where the setting is not sound the rest is not poured. */
export async function ownStudy(study: ChosenStudy, pool: PourPool): Promise<KnownStudy> {
  const { axes } = study.head;
  const at = axes.flatMap(({ setPoint }) => setPoint ?? []);
  // A pour that has no value of what is varied is no point of its own study.
  if (at.length < axes.length) return foundOf(study, new Map(), null, null);
  const regionAt = async (values: SettingValues): Promise<Region> =>
    regionOf(await resultAt(study, pool, values));
  const setRegion = await regionAt(
    Object.fromEntries(axes.map(({ setting }, index) => [setting, at[index]!])),
  );
  if (setRegion !== 'sound') return foundOf(study, new Map(), setRegion, null);
  const results = await mapped(study, pool);
  const isBeyondMachine = beyondMachine(study.plan);
  const measured = await marginsOf({ axes, at, regionAt, isBeyondMachine });
  return foundOf(study, results, setRegion, marginsWithin(measured, axes, mapAnswer(axes, results)));
}

/** What a study says of the range that it looks at, for another pour within it. */
export async function wholeStudy(study: ChosenStudy, pool: PourPool): Promise<KnownStudy> {
  return foundOf(study, await mapped(study, pool), null, null);
}

const foundOf = (
  { head: { axes }, plan, study }: ChosenStudy,
  results: KnownStudy['results'],
  setRegion: KnownStudy['setRegion'],
  margins: KnownStudy['margins'],
): KnownStudy => ({ axes, plan, results, setRegion, margins, spreads: spreadsOf(study, plan) });

async function resultAt({ plan }: ChosenStudy, pool: PourPool, values: SettingValues): Promise<PointResult> {
  const at = pointAt(plan, values);
  return 'refused' in at ? at : pool.result(at.plan);
}

/** The points that the page pours: a look over the whole, then both sides of every edge. */
async function mapped(study: ChosenStudy, pool: PourPool): Promise<Map<number, PointResult>> {
  const grid = gridOf(study.head);
  const results = new Map<number, PointResult>();
  const regions = new Map<number, Region>();
  for (let wave = pointsWanted(grid, regions); wave.length > 0; wave = pointsWanted(grid, regions))
    await Promise.all(
      wave.map(async (point) => {
        const result = await resultAt(study, pool, valuesAt(grid, point));
        results.set(point, result);
        regions.set(point, regionOf(result));
      }),
    );
  return results;
}
