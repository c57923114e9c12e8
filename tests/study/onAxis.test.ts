import { expect, test } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { placeOnAxis } from '$src/report/study/onAxis';
import { planAt } from '$src/report/study/planAt';
import { samplePlan } from './samplePlan';

const base = samplePlan();
const at = (values: Readonly<Record<string, number>>) => {
  const found = planAt(base, values);
  if (!('plan' in found)) throw new Error('There is such a pour.');
  return found.plan;
};

test('a pour lies on the axis of a study where it differs in what is varied alone, on whatever mesh', () => {
  const other = at({ 'tilt.time': 7 });
  const finer = { ...other, computation: { ...other.computation, meshCells: 333 } };
  expect(placeOnAxis(base, 'tilt.time', finer)).toBeCloseTo(7, 9);
  expect(placeOnAxis(base, 'tilt.time', base)).not.toBeNull();
});

test('a pour that differs in anything else does not, nor does one that has no such setting', () => {
  expect(placeOnAxis(base, 'tilt.time', at({ 'tilt.time': 7, 'tilt.start': fromDegrees(12) }))).toBeNull();
  const denser = { ...base, liquid: { ...base.liquid, density: base.liquid.density * 1.01 } };
  expect(placeOnAxis(base, 'tilt.time', denser)).toBeNull();
  expect(placeOnAxis(base, 'tilt.valve', base)).toBeNull();
});
