import { describe, expect, it } from 'vitest';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { fromDegrees, toDegrees } from '$src/core/units';
import { numberedFolds } from '$src/report/numberedFolds';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { computed } from './computed';
import { coarsePlanOf } from './planOf';
import { sillJet } from './sources/class/sillJet';
import { levelOrUphill } from './sources/levelOrUphill';
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

describe('a machine that starts level, its basin full to the brink', () => {
  const plan = coarsePlanOf(levelOrUphill, 'level-sill');
  const base = computed(plan);
  const brimfulAt = (values: SettingValues) => {
    const at = planAt(plan, values);
    if ('refused' in at) throw new Error(at.refused.reason);
    const volume = volumeFromFillLevel(at.plan.section, at.plan.tilt.start, -0.001)!;
    return computed({ ...at.plan, volume });
  };

  it('is told no fuller basin and no lower sill', () => {
    const cures = numberedFolds(base).map(({ cure }) => cure);
    expect(cures.join(' ')).toMatch(/full to the brink/);
    expect(cures.join(' ')).not.toMatch(/fill the basin|fuller basin|lower the sill|lower sill/);
  });

  it('folds less from a somewhat longer basin with more metal, and more over a lower sill with less', () => {
    const longer = brimfulAt({ 'basin.length': 0.23 });
    expect(longer.figures.foldScore).toBeLessThan(0.95 * base.figures.foldScore);
    expect(longer.figures.spilled).toBeLessThan(1e-6);
    expect(brimfulAt({ 'basin.depth': 0.02 }).figures.foldScore).toBeGreaterThan(base.figures.foldScore);
  });

  it('runs its front slower when turned more slowly', () =>
    expect(figuresAt(plan, { 'tilt.rate': fromDegrees(6) }).peak).toBeLessThan(
      0.95 * base.figures.peakFrontSpeed!,
    ));
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
