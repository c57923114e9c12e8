import { describe, expect, it } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { planAt } from '$src/report/study/planAt';
import { pointFigures } from '$src/report/study/pointFigures';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import type { PointResult } from '$src/report/study/region';
import { settingNamed } from '$src/report/study/settings';
import type { Study } from '$src/report/study/study';
import type { StudyPool } from '$src/ui/study/studyPool';
import { StudyRun } from '$src/ui/study/studyRun.svelte';
import { inventedRecord } from '../report/inventedRecord';
import { samplePlan } from '../study/samplePlan';

const study: Study = { ...POUR_WINDOW, axes: POUR_WINDOW.axes.map((axis) => ({ ...axis, points: 4 })) };

/** A pool that says of every pour that it failed, and remembers which it was asked to run. */
function countingPool() {
  const kept = new Map<string, PointResult>();
  const ran: string[] = [];
  const pool: Pick<StudyPool, 'known' | 'result' | 'each'> = {
    known: async (planHash) => kept.get(planHash) ?? null,
    result: async (_: PourPlan, planHash) => {
      const known = kept.get(planHash);
      if (known) return known;
      ran.push(planHash);
      const result: PointResult = { failed: 'invented' };
      kept.set(planHash, result);
      return result;
    },
    each: async (items, isOver, work) => {
      for (const item of items) if (!isOver()) await work(item);
    },
  };
  return { pool: pool as StudyPool, ran, kept };
}

describe('a study that is looked at', () => {
  it('pours nothing and tells how many points are lacking, less the 8 whose die the ladle fills in part', async () => {
    const { pool, ran } = countingPool();
    const run = new StudyRun(pool, samplePlan(), study);
    await run.look();
    expect(ran).toEqual([]);
    expect([run.state, run.lacking]).toEqual(['waiting', 8]);
  });

  it('is poured when it is begun, and is whole without a pour the next time', async () => {
    const { pool, ran } = countingPool();
    const run = new StudyRun(pool, samplePlan(), study);
    await run.look();
    await run.start();
    expect(run.state).toBe('fresh');
    const poured = ran.length;
    expect(poured).toBeGreaterThanOrEqual(8);
    const again = new StudyRun(pool, samplePlan(), study);
    await again.look();
    expect([again.state, again.results.size, ran.length]).toEqual(['fresh', run.results.size, poured]);
  });

  it('pours the setting itself before all points, so that what is said of it stands', async () => {
    const { pool, ran } = countingPool();
    const run = new StudyRun(pool, samplePlan(), study);
    const going = run.start();
    await expect.poll(() => run.setRegion).toBe('not computed');
    await going;
    const values = Object.fromEntries(run.axes.map(({ setting, setPoint }) => [setting, setPoint!]));
    const at = planAt(run.plan, values);
    expect('plan' in at && planHash(at.plan)).toBe(ran[0]);
  });

  it('keeps what is known of it and waits with the rest', async () => {
    const { pool, ran, kept } = countingPool();
    await new StudyRun(pool, samplePlan(), study).start();
    // The first is the setting itself, which is no point of the grid.
    kept.delete(ran[1]!);
    const run = new StudyRun(pool, samplePlan(), study);
    await run.look();
    expect([run.state, run.lacking, run.results.size]).toEqual(['waiting', 1, 15]);
  });
});

describe('a study of one setting', () => {
  const quiet = { ...pointFigures(inventedRecord()), verdict: 'sound' as const, lap: null, shareAtStart: 0 };
  const curve: Study = { ...study, axes: [{ setting: 'tilt.time', from: 2, to: 18, points: 9 }] };

  /** A pool in which a tilt of less than so many seconds folds film, and a slower one is sound. */
  function foldingUnder(seconds: number): StudyPool {
    const pool: Pick<StudyPool, 'known' | 'result' | 'each'> = {
      known: async () => null,
      result: async (plan: PourPlan) => {
        const time = settingNamed(plan, 'tilt.time')!.read(plan)!;
        return { figures: time < seconds ? { ...quiet, verdict: 'folds film' } : quiet };
      },
      each: async (items, isOver, work) => {
        for (const item of items) if (!isOver()) await work(item);
      },
    };
    return pool as StudyPool;
  }

  it('has the margins of its set point, found to an eighth of a step', async () => {
    const at = planAt(samplePlan(), { 'tilt.time': 9 });
    if (!('plan' in at)) throw new Error('There is such a pour.');
    const run = new StudyRun(foldingUnder(6.3), at.plan, curve);
    await run.start();
    expect([run.state, run.setRegion]).toEqual(['fresh', 'sound']);
    const [less, more] = run.margins!;
    expect(less!.meets).toBe('folds film');
    expect(less!.limit).toBeGreaterThanOrEqual(6.3);
    expect(less!.limit).toBeLessThan(6.3 + 2 / 8);
    expect([more!.distance, more!.meets]).toEqual([null, null]);
  });
});
