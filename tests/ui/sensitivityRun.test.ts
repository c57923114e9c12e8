import { describe, expect, it } from 'vitest';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { edgeOfSensitivity } from '$src/report/nearestEdge';
import { type PointFigures, pointFigures } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import { SensitivityRun } from '$src/ui/sensitivity/sensitivityRun.svelte';
import type { StudyPool } from '$src/ui/study/studyPool';
import { inventedPlan, inventedRecord } from '../report/inventedRecord';

const MESH = 4 * PREVIEW_MESH_CELLS;
const plan: PourPlan = {
  ...inventedPlan,
  computation: { ...inventedPlan.computation, meshCells: MESH },
};
const sound: PointFigures = { ...pointFigures(inventedRecord()), verdict: 'sound', lap: null };
const spilling: PointFigures = { ...sound, verdict: 'spills', spill: { volume: 6e-7, isByLevel: false } };

/** A pool that gives invented figures by the mesh of a pour, and remembers the meshes it was asked to run. */
function inventingPool(figuresOn: (meshCells: number) => PointFigures) {
  const kept = new Map<string, PointResult>();
  const ran: number[] = [];
  const pool: Pick<StudyPool, 'known' | 'result' | 'each'> = {
    known: async (hash) => kept.get(hash) ?? null,
    result: async ({ computation: { meshCells } }: PourPlan, hash) => {
      ran.push(meshCells);
      const result: PointResult = { figures: figuresOn(meshCells) };
      kept.set(hash, result);
      return result;
    },
    each: async (items, isOver, work) => {
      for (const item of items) if (!isOver()) await work(item);
    },
  };
  return { pool: pool as StudyPool, ran, kept };
}

const edgeOf = (run: SensitivityRun) =>
  edgeOfSensitivity({ base: run.base!, variations: run.variations, results: run.results });

describe('a pour asked how sure it is', () => {
  it('is varied on the coarse mesh where that calls it as its own does', async () => {
    const { pool, ran } = inventingPool(() => sound);
    const run = new SensitivityRun(pool, plan, sound);
    await run.start();
    expect([run.state, run.isOnOwnMesh, run.meshCells]).toEqual(['done', false, PREVIEW_MESH_CELLS]);
    expect(new Set(ran)).toEqual(new Set([PREVIEW_MESH_CELLS]));
  });

  it('is varied on its own mesh where the coarse one contradicts its verdict, and is not called unsound as it is', async () => {
    const { pool, ran } = inventingPool((meshCells) => (meshCells === MESH ? sound : spilling));
    const run = new SensitivityRun(pool, plan, sound);
    await run.start();
    expect([run.state, run.isOnOwnMesh, run.meshCells]).toEqual(['done', true, MESH]);
    // Once on the coarse mesh: the pour itself.
    expect(ran.filter((meshCells) => meshCells !== MESH)).toHaveLength(1);
    expect(run.results.size).toBe(run.variations.length);
    expect(edgeOf(run).name).toBe('no edge met');
    expect(run.coarse).toBe(spilling);
  });

  it('computes the pour on its own mesh where its figures are not known yet', async () => {
    const { pool, ran } = inventingPool((meshCells) => (meshCells === MESH ? sound : spilling));
    const run = new SensitivityRun(pool, plan, null);
    await run.start();
    expect([run.isOnOwnMesh, ran.slice(0, 2)]).toEqual([true, [PREVIEW_MESH_CELLS, MESH]]);
  });

  it('keeps the coarse mesh for a pour that is not sound itself', async () => {
    const { pool } = inventingPool(() => spilling);
    const run = new SensitivityRun(pool, plan, { ...sound, verdict: 'folds film' });
    await run.start();
    expect(run.isOnOwnMesh).toBe(false);
  });

  it('takes what is kept when that is all of it, and pours nothing', async () => {
    const { pool, ran, kept } = inventingPool(() => sound);
    expect(await SensitivityRun.known(pool, plan, sound)).toBeNull();
    const first = new SensitivityRun(pool, plan, sound);
    await first.start();
    const poured = ran.length;
    const again = await SensitivityRun.known(pool, plan, sound);
    expect(again?.state).toBe('done');
    expect(edgeOf(again!)).toEqual(edgeOf(first));
    const one = first.variations.find(({ at }) => 'plan' in at)!.at;
    if ('plan' in one) kept.delete(planHash(one.plan));
    expect(await SensitivityRun.known(pool, plan, sound)).toBeNull();
    expect(ran.length).toBe(poured);
  });
});
