import { expect, it } from 'vitest';
import { fromCelsius, toCelsius } from '$src/core/units';
import { planAt } from '$src/report/study/planAt';
import { settingNamed } from '$src/report/study/settings';
import { quantityOf } from '$src/ui/inputs/quantity';
import { rangeAround } from '$src/ui/study/rangeAround';
import { samplePlan } from '../../study/samplePlan';

const units = { length: 'mm', mass: 'kg', temperature: 'degC' } as const;

it('looks at die temperatures near that of the pour, not at all there are', () => {
  const at = planAt(samplePlan(), { 'heat.die': fromCelsius(283) });
  if (!('plan' in at)) throw new Error('There is no such pour.');
  const range = rangeAround(settingNamed(at.plan, 'heat.die')!, at.plan, quantityOf('temperature', units));
  expect(toCelsius(range.from)).toBeCloseTo(180, 6);
  expect(toCelsius(range.to)).toBeCloseTo(400, 6);
});

it('looks half as far again and half as near at what has a zero', () => {
  const plan = samplePlan();
  const mass = settingNamed(plan, 'charge.mass')!;
  const { from, to } = rangeAround(mass, plan, quantityOf('mass', units));
  const now = mass.read(plan)!;
  expect(from).toBeGreaterThan(0.35 * now);
  expect(from).toBeLessThanOrEqual(0.5 * now);
  expect(to).toBeGreaterThanOrEqual(1.5 * now);
  expect(to).toBeLessThan(1.7 * now);
});
