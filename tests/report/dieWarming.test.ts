import { describe, expect, it } from 'vitest';
import { checkDieCycle, USUAL_DIE_CYCLE } from '$src/core/heat/dieCycle';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { fromCelsius } from '$src/core/units';
import { dieWarming } from '$src/report/dieWarming';
import { inventedPlan } from './inventedRecord';

const plan = { ...inventedPlan, heat: heatPlanOf(metalNamed('A356')!, inventedPlan.section)! };

describe('a die poured again and again', () => {
  it('starts at the temperature the pour was computed with, and goes to where it settles', () => {
    const warming = dieWarming(plan, USUAL_DIE_CYCLE)!;
    expect(warming.temperatures[0]).toBe(warming.set);
    expect(warming.set).toBe(plan.heat.regions[0]!.dieTemperature);
    const left = Math.abs(warming.temperatures.at(-1)! - warming.settled);
    expect(left).toBeLessThanOrEqual(0.05 * Math.abs(warming.set - warming.settled));
  });

  it('keeps its temperature at the cycle found for that', () => {
    const { cycleToKeep, set } = dieWarming(plan, USUAL_DIE_CYCLE)!;
    const kept = dieWarming(plan, { ...USUAL_DIE_CYCLE, cycleTime: cycleToKeep! })!;
    expect(kept.settled).toBeCloseTo(set, 8);
  });

  it('has nothing to say without heat, and names a wrong field', () => {
    expect(dieWarming(inventedPlan, USUAL_DIE_CYCLE)).toBeNull();
    expect(checkDieCycle(USUAL_DIE_CYCLE)).toEqual([]);
    const wrong = { ...USUAL_DIE_CYCLE, cycleTime: 0, shopTemperature: fromCelsius(300) };
    expect(checkDieCycle(wrong).map(({ path }) => path)).toEqual(['cycleTime', 'shopTemperature']);
  });
});
