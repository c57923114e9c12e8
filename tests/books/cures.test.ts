import { describe, expect, it } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import { fromDegrees, toDegrees } from '$src/core/units';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { computed } from './computed';
import { coarsePlanOf } from './planOf';
import { sillJet } from './sources/class/sillJet';
import { twoTilts } from './sources/twoTilts';

/** What the cures of folds advise must help in the computation itself: each pour against the same one cured. */

function figuresAt(plan: PourPlan, values: SettingValues) {
  const at = planAt(plan, values);
  if ('refused' in at) throw new Error(at.refused.reason);
  const { figures } = computed(at.plan);
  if (figures.firstFlow.kind !== 'angle') throw new Error(`First flow is ${figures.firstFlow.kind}.`);
  return { ...figures, flow: toDegrees(figures.firstFlow.inclination), peak: figures.peakFrontSpeed! };
}

describe('a front over critical behind a sill', () => {
  const plan = coarsePlanOf(sillJet, 'high');
  const base = figuresAt(plan, {});

  it('is not cured by a higher start: metal comes over the sill where it came before', () => {
    for (const start of [30, 45]) {
      const higher = figuresAt(plan, { 'tilt.start': fromDegrees(start) });
      expect(Math.abs(higher.flow - base.flow)).toBeLessThan(1.5);
      expect(higher.peak).toBeGreaterThan(0.93 * base.peak);
    }
  });

  it.each([
    ['a fuller basin', { 'charge.mass': 0.9 }],
    ['a lower sill', { 'basin.depth': 0.012 }],
  ])('is eased by %s', (_, cure) => {
    expect(figuresAt(plan, cure).peak).toBeLessThan(0.93 * base.peak);
  });
});

describe('gas sealed in', () => {
  const plan = coarsePlanOf(twoTilts, 'pour-quick');
  const isSealed = (values: SettingValues): boolean => {
    const at = planAt(plan, values);
    if ('refused' in at) throw new Error(at.refused.reason);
    return computed(at.plan).folds.some(({ kind }) => kind === 'gas sealed in');
  };

  it('is cured by turning more slowly, and the die then fills', () => {
    expect(isSealed({})).toBe(true);
    expect(figuresAt(plan, {}).filledTime).toBeNull();
    const slow = { 'tilt.rate': fromDegrees(15) };
    expect(isSealed(slow)).toBe(false);
    expect(figuresAt(plan, slow).filledTime).not.toBeNull();
    expect(figuresAt(plan, slow).peak).toBeLessThan(0.7 * figuresAt(plan, {}).peak);
  });
});
