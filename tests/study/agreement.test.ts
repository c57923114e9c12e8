import { describe, expect, it } from 'vitest';
import { runPour } from '$src/core/pour/runPour';
import { fromDegrees } from '$src/core/units';
import { type Grid, gridOf, valuesAt } from '$src/report/study/grid';
import { planAt } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { filledMap, pointsWanted } from '$src/report/study/refine';
import { type Region, regionOf } from '$src/report/study/region';
import { studyPlan } from '$src/report/study/studyPlan';
import { samplePlan } from './samplePlan';

/** 40 mesh cells and quick strokes, so that 400 pours take seconds; the physics is the same, the picture coarser. */
const axes = [
  { setting: 'tilt.time', from: 1.2, to: 5, points: 20 },
  { setting: 'tilt.start', from: fromDegrees(0), to: fromDegrees(40), points: 20 },
];
const plan = studyPlan(samplePlan(40), { axes, meshCells: 40 });
const grid: Grid = gridOf({ axes });

function regionAt(point: number): Region {
  const at = planAt(plan, valuesAt(grid, point));
  if ('refused' in at) return regionOf(at);
  const pour = runPour(at.plan);
  let step = pour.next();
  while (!step.done) step = pour.next();
  return regionOf(pointResult(step.value));
}

describe('a refined map of 20 × 20 against the same map by brute force', () => {
  it('agrees in 98 points of a hundred', () => {
    const brute = Array.from({ length: grid.count }, (_, point) => regionAt(point));
    const known = new Map<number, Region>();
    for (let wave = pointsWanted(grid, known); wave.length > 0; wave = pointsWanted(grid, known))
      for (const point of wave) known.set(point, brute[point]!);
    const filled = filledMap(grid, known)!;
    const agreeing = filled.filter(({ region }, point) => region === brute[point]).length;
    expect(new Set(brute).size).toBeGreaterThan(1);
    expect(agreeing / grid.count).toBeGreaterThanOrEqual(0.98);
    expect(known.size).toBeLessThan(grid.count);
  }, 120_000);
});
