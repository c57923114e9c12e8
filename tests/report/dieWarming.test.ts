import { describe, expect, it } from 'vitest';
import { checkDieCycle, USUAL_DIE_CYCLE } from '$src/core/heat/dieCycle';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { wayBack } from '$src/core/tilt/machine/wayBack';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { MachineTilt } from '$src/core/tilt/tilt';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { dieWarming, machineTime, machineTimeSentence } from '$src/report/dieWarming';
import { inventedPlan, inventedRecord } from './inventedRecord';

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

describe('the cycle of a machine', () => {
  const tilt: MachineTilt = {
    kind: 'machine',
    start: fromDegrees(30),
    end: fromDegrees(-90),
    limits: WIDEST_LIMITS,
    machine: BENCH_MACHINE,
  };
  const record = inventedRecord({ plan: { ...inventedPlan, tilt } });

  it('counts its tilt and its way back, and what they leave', () => {
    const time = machineTime(record, USUAL_DIE_CYCLE);
    expect(time.back).toBe(wayBack(tilt).time);
    expect(time.tilt + time.back! + time.left).toBeCloseTo(USUAL_DIE_CYCLE.cycleTime, 9);
    expect(machineTimeSentence(record, USUAL_DIE_CYCLE)).toMatch(
      /^That is 15 pours an hour: .* the way back/,
    );
  });

  it('says so when the machine alone is longer than the cycle', () => {
    const short = { ...USUAL_DIE_CYCLE, cycleTime: 3 };
    expect(machineTimeSentence(record, short)).toContain('the machine alone is longer than the cycle');
  });

  it('of a tilt told in stages the way back is not known', () => {
    const { back, tilt: took } = machineTime(inventedRecord(), USUAL_DIE_CYCLE);
    expect(back).toBeNull();
    expect(took).toBeGreaterThan(0);
  });
});
