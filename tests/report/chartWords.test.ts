import { expect, test } from 'vitest';
import { METRIC, type PageUnits, SPEED } from '$src/core/units';
import { fittedSpeedDomain, speedDomain } from '$src/report/chartWords';
import { inventedPlan, inventedRecord } from './inventedRecord';

const INCHES: PageUnits = { length: 'in', mass: 'lb', temperature: 'degF' };

/** A pour whose front runs at these speeds, in a metal of that critical speed [m/s]. */
const pourAt = (speeds: readonly number[], criticalSpeed: number) => {
  const record = inventedRecord({
    plan: { ...inventedPlan, liquid: { ...inventedPlan.liquid, criticalSpeed } },
  });
  return { ...record, frontSpeeds: { ...record.frontSpeeds, speed: Float64Array.from(speeds) } };
};

test.each([
  ['the quickest', [pourAt([0.2, 0.64], 0.49), pourAt([0.81], 0.49)], 0.9, 35],
  ['the quickest, to a whole step', [pourAt([0.7], 0.49)], 0.7, 30],
  // Its hatch and words need room over a limit that no front comes near.
  ['the highest limit', [pourAt([0.1], 0.49), pourAt([0.1], 0.6)], 0.8, 35],
  ['the limit, where no front ran', [pourAt([], 0.49)], 0.7, 30],
] as const)('the speed axis of pours side by side ends at what %s asks for', (_, records, top, topInches) => {
  for (const [units, wanted] of [
    [METRIC, top],
    [INCHES, topInches],
  ] as const) {
    const [from, to] = fittedSpeedDomain(records, units);
    expect([from, to]).toEqual([0, wanted]);
    const drawn = records.flatMap(({ frontSpeeds, plan }) => [
      ...frontSpeeds.speed,
      plan.liquid.criticalSpeed,
    ]);
    for (const speed of drawn) expect(SPEED[units.length].toShown(speed)).toBeLessThanOrEqual(to);
  }
});

test('that of one pour is never cut either, and no lower than 1 m/s', () => {
  expect(speedDomain([pourAt([0.3], 0.49)], METRIC)).toEqual([0, 1]);
  expect(speedDomain([pourAt([1.31], 0.49)], METRIC)).toEqual([0, 1.4]);
});
