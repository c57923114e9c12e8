import { describe, expect, it } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { fromCelsius, fromDegrees, fromMillimetres, toDegrees } from '$src/core/units';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { type Region, regionOf } from '$src/report/study/region';
import { computed } from './computed';
import { coarsePlanOf } from './planOf';
import { basinLengths } from './sources/basinLengths';
import { thinWallWindow } from './sources/thinWall';

/** The notes of two books make claims of their maps; these tests hold the books to them, on the mesh of a study. */

function pouredAt(plan: PourPlan, values: SettingValues): PourRecord {
  const at = planAt(plan, values);
  if ('refused' in at) throw new Error(at.refused.reason);
  return computed(at.plan);
}
const regionAt = (plan: PourPlan, values: SettingValues): Region =>
  regionOf(pointResult(pouredAt(plan, values)));

describe('the pour window of a 4 mm wall', () => {
  const wall = coarsePlanOf(thinWallWindow, 'pour');
  const window = (time: number, start: number): Region =>
    regionAt(wall, { 'tilt.time': time, 'tilt.start': fromDegrees(start) });

  it('folds film at its quick edge and goes stiff at its slow one', () => {
    for (const start of [0, 30, 45]) expect(window(2, start)).toBe('folds film');
    for (const start of [15, 30, 45]) expect(['misrun', 'laps']).toContain(window(30, start));
  });

  it('leaves something sound between the two, where the pour above is set', () => {
    for (const start of [0, 15, 30]) expect(window(10, start)).toBe('sound');
    expect(regionOf(pointResult(computed(wall)))).toBe('sound');
  });

  it('is as sound on the mesh of the pour above, four times as fine: what folds there is slight', () => {
    const fine = computed({ ...wall, computation: { ...wall.computation, meshCells: 400 } });
    expect(regionOf(pointResult(fine))).toBe('sound');
    for (const { folds } of [computed(wall), fine])
      expect(folds.filter(({ size }) => size !== 'slight')).toEqual([]);
  });

  it('has a slow edge that heat decides: without heat the slow pour fills', () => {
    const slow = planAt(wall, { 'tilt.time': 30, 'tilt.start': fromDegrees(30) });
    if ('refused' in slow) throw new Error(slow.refused.reason);
    expect(computed(slow.plan).figures.filledTime).toBeNull();
    expect(computed({ ...slow.plan, heat: null }).figures.filledTime).not.toBeNull();
  });

  it('moves its slow edge with the die: hotter, and the wall fills', () => {
    const slow = { 'tilt.time': 24, 'tilt.start': fromDegrees(30) };
    expect(pouredAt(wall, slow).figures.filledTime).toBeNull();
    expect(pouredAt(wall, { ...slow, 'heat.die': fromCelsius(480) }).figures.filledTime).not.toBeNull();
  });
});

describe('the basin that is too long', () => {
  const pours = [115, 150, 200].map((length) => computed(coarsePlanOf(basinLengths, `pour-${length}`)));
  const flows = pours.map(({ figures: { firstFlow } }) => {
    if (firstFlow.kind !== 'angle') throw new Error(`First flow is ${firstFlow.kind}.`);
    return toDegrees(firstFlow.inclination);
  });

  it('has metal wait longer the longer it is, and run faster', () => {
    for (const k of [1, 2]) {
      expect(flows[k]!).toBeLessThan(flows[k - 1]! - 5);
      expect(pours[k]!.figures.peakFrontSpeed!).toBeGreaterThan(pours[k - 1]!.figures.peakFrontSpeed! + 0.05);
    }
  });

  it('puts the short one right and not the long one', () => {
    const critical = pours[0]!.plan.liquid.criticalSpeed;
    expect(pours[0]!.figures.peakFrontSpeed!).toBeLessThan(0.8 * critical);
    expect(pours[2]!.figures.peakFrontSpeed!).toBeGreaterThan(critical);
  });

  it('is not cured by a steeper start', () => {
    const plan = coarsePlanOf(basinLengths, 'pour-115');
    const steep = { 'basin.length': fromMillimetres(200), 'tilt.start': fromDegrees(45) };
    expect(regionAt(plan, steep)).toBe('folds film');
  });

  it('holds the same weight each time', () => {
    for (const { plan } of pours) expect(plan.volume * plan.liquid.density).toBeCloseTo(0.696, 10);
  });
});
