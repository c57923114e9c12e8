import { describe, expect, it } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { cavityVolume } from '$src/core/section/cavity';
import { fromCelsius, fromDegrees, fromMillimetres, toDegrees } from '$src/core/units';
import { variationsOf } from '$src/report/sensitivity';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { type Region, regionOf } from '$src/report/study/region';
import { resultWords } from '$src/report/study/regionWords';
import { computed } from './computed';
import { feedingAt } from './feedingAt';
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
    for (const start of [10, 30, 45]) expect(window(2, start)).toBe('folds film');
    for (const start of [15, 30, 45]) expect(['misrun', 'laps']).toContain(window(30, start));
  });

  it('leaves something sound between the two, where the pour above is set', () => {
    for (const start of [10, 20, 30]) expect(window(10, start)).toBe('sound');
    expect(regionOf(pointResult(computed(wall)))).toBe('sound');
  });

  it('has metal in the die while it is ladled from level on, and not from 8° uphill', () => {
    for (const start of [0, 5]) expect(window(10, start)).toBe('in the die while ladling');
    expect(window(10, 8)).toBe('sound');
  });

  it('stays sound with everything that is tried around it, feeder and all', { timeout: 120_000 }, () => {
    const called = variationsOf(wall).map(({ id, at }) => [
      id,
      'plan' in at ? resultWords(pointResult(computed(at.plan))) : at.refused.reason,
    ]);
    expect(called.length).toBeGreaterThan(12);
    expect(called.filter(([, words]) => words !== 'sound')).toEqual([]);
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

describe('how much to ladle behind a 4 mm wall', () => {
  const wall = coarsePlanOf(thinWallWindow, 'pour');
  const ladled = (mass: number, time = 10): string =>
    resultWords(pointResult(pouredAt(wall, { 'charge.mass': mass, 'tilt.time': time })));

  it('is too little up to some 0.48 kg: quiet, and the feeder short', () => {
    for (const mass of [0.42, 0.46, 0.48])
      expect(ladled(mass)).toBe('fills quietly, but the feeder is short of metal');
  });

  it('is enough from 0.5 kg on, at more than one tilt time', () => {
    for (const mass of [0.5, 0.54, 0.6]) expect(ladled(mass)).toBe('sound');
    for (const time of [9, 11]) expect(ladled(0.54, time)).toBe('sound');
  });

  it('is too much from some 0.76 kg on, past the end of the map', () => {
    for (const mass of [0.66, 0.75]) expect(ladled(mass)).not.toContain('spills metal');
    for (const mass of [0.78, 0.8]) expect(ladled(mass)).toContain('spills metal');
  });

  it('folds and goes stiff at the ends of the map whatever is ladled', () => {
    for (const mass of [0.42, 0.54, 0.66]) {
      expect(ladled(mass, 2)).toContain('folds film');
      expect(ladled(mass, 30)).toContain('misrun');
    }
  });

  it('takes a quarter of a kilo for the wall itself', () => {
    expect(cavityVolume(wall.section) * wall.liquid.density).toBeCloseTo(0.25, 2);
  });

  it('needs the roof over the mouth: no higher than the gate, the feeder freezes as soon as the gate does', () => {
    const roof = wall.section.roof.map(({ x, y }) => ({
      x,
      y: y === fromMillimetres(35) ? fromMillimetres(12) : y,
    }));
    const low = { ...wall, section: { ...wall.section, roof } };
    expect(feedingAt(wall, 0.54).timeRatio).toBeGreaterThan(1.5);
    expect(feedingAt(low, 0.54).timeRatio).toBeCloseTo(1, 1);
    expect(computed(low).figures.spilled).toBeGreaterThan(0);
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

  it('is not cured by a steeper start, where it folds and spills besides', () => {
    const plan = coarsePlanOf(basinLengths, 'pour-115');
    const steep = { 'basin.length': fromMillimetres(200), 'tilt.start': fromDegrees(45) };
    expect(regionAt(plan, steep)).toBe('folds film and spills');
  });

  it('holds the same weight each time', () => {
    for (const { plan } of pours) expect(plan.volume * plan.liquid.density).toBeCloseTo(0.696, 10);
  });
});
