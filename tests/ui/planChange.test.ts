import { expect, test } from 'vitest';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { planChange } from '$src/ui/planChange';
import { inventedPlan as plan } from '../report/inventedRecord';

test('nothing changed, nothing said; the coarse mesh is no change of the user', () => {
  expect(planChange(plan, plan)).toBeNull();
  const coarse = { ...plan, computation: { ...plan.computation, meshCells: 100 } };
  expect(planChange(coarse, plan)).toBeNull();
});

test('one change is told with both values', () => {
  const more = { ...plan, volume: plan.volume * 1.5 };
  expect(planChange(plan, more)).toMatch(
    /^Charge changed from [\d.]+ kg \([\d.]+ mm (below|above) the lip\) to [\d.]+ kg\.$/,
  );
});

test('a change too small for the words is still told', () => {
  expect(planChange(plan, { ...plan, volume: plan.volume * 1.000001 })).toBe('Charge changed a little.');
});

test('several changes are named, a whole new pour is counted', () => {
  const tilt = { ...plan.tilt, start: plan.tilt.start - fromDegrees(1) };
  const two = { ...plan, tilt, volume: plan.volume * 2 };
  expect(planChange(plan, two)).toBe('Start angle and charge changed.');
  const pivot = { x: fromMillimetres(1), y: fromMillimetres(1) };
  const liquid = { ...plan.liquid, density: 6700, surfaceTension: 1.2 };
  const other = { ...two, liquid, section: { ...plan.section, pivot } };
  expect(planChange(plan, other)).toMatch(/^\d+ inputs changed\.$/);
});
