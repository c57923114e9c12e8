import { Solver } from 'odex';
import { describe, expect, it } from 'vitest';
import {
  allowedDrop,
  type BasinPool,
  landingSpeed,
  type Wait,
  waitInBasin,
} from '$src/core/heat/waitInBasin';
import { waitWarnings } from '$src/core/heat/waitWarnings';
import { fromCelsius, fromMillimetres, toCelsius, toMillimetres } from '$src/core/units';
import { FREEZING } from './pourWithHeat';

const WAIT: Wait = {
  dropHeight: 0.01,
  ladleTime: 4,
  skimTime: 2,
  settleTime: 3,
  tiltStart: null,
  skullShare: 0.03,
  drossShare: 0.01,
  measuredTemperature: null,
};
const POOL: BasinPool = {
  volume: 4e-4,
  contactArea: 0.02,
  surfaceArea: 0.01,
  contact: { transfer: 400, dieTemperature: fromCelsius(300) },
  surfaceTransfer: 25,
  shopTemperature: fromCelsius(25),
};
const POURING = fromCelsius(730);

describe('wait in the basin', () => {
  it('lands at √(2 g h); 12.7 mm gives 0.5 m/s and 8.2 mm 0.4 m/s (free fall)', () => {
    expect(landingSpeed(fromMillimetres(12.7))).toBeCloseTo(0.5, 2);
    expect(landingSpeed(fromMillimetres(8.2))).toBeCloseTo(0.4, 2);
    expect(toMillimetres(allowedDrop(0.49))).toBeCloseTo(12.2, 1);
  });

  it('cools the pool to what an ODE solver says', () => {
    const result = waitInBasin(FREEZING, POOL, WAIT, POURING, 0.5);
    expect(result.waited).toBe(7);
    const solver = new Solver(1);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
    const capacity = FREEZING.density * POOL.volume * FREEZING.liquidHeat;
    const end = solver.solve(
      (_, y) => [
        -(400 * 0.02 * (y[0]! - fromCelsius(300)) + 25 * 0.01 * (y[0]! - fromCelsius(25))) / capacity,
      ],
      0,
      [POURING],
      7,
    );
    expect(Math.abs(result.estimated - end.y[0]!)).toBeLessThan(1e-6);
    expect(toCelsius(result.estimated)).toBeGreaterThan(700);
    expect(result.solidFraction).toBe(0);
  });

  it('gives way to a measured temperature, and to an early tilt', () => {
    const measured = waitInBasin(
      FREEZING,
      POOL,
      { ...WAIT, measuredTemperature: fromCelsius(690) },
      POURING,
      0.5,
    );
    expect(measured.temperature).toBe(fromCelsius(690));
    expect(measured.estimated).not.toBe(measured.temperature);
    expect(waitInBasin(FREEZING, POOL, { ...WAIT, tiltStart: 3 }, POURING, 0.5).waited).toBe(1.5);
  });

  it('freezes in a wait that is far too long', () => {
    const result = waitInBasin(FREEZING, POOL, { ...WAIT, settleTime: 90 }, POURING, 0.5);
    expect(result.solidFraction).toBeGreaterThan(0.2);
    expect(result.temperature).toBeLessThan(FREEZING.liquidus);
  });

  const STAND = { level: 0.05, skimBar: 0.04, lip: 0.045, dross: 0.003 };
  it.each([
    ['nothing', {}, {}, []],
    ['a high drop', { dropHeight: 0.05 }, {}, ['dropHeight']],
    ['a tilt before ladling ends', { tiltStart: 2 }, {}, ['tiltStart']],
    ['a level below the bar, dross at the lip', {}, { level: 0.039, lip: 0.038 }, ['skimBar', 'dross']],
    ['no bar, metal well over the lip', {}, { skimBar: null, level: 0.06 }, []],
    ['no bar, dross at the lip', {}, { skimBar: null, level: 0.046 }, ['dross']],
    ['a bar that dips in', {}, { level: 0.046 }, []],
  ])('warns of %s', (_, wait, stand, paths) => {
    const issues = waitWarnings({ ...WAIT, ...wait }, { ...STAND, ...stand }, 0.49);
    expect(issues.map((issue) => issue.path)).toEqual(paths);
    for (const issue of issues) expect(issue.remedy.length).toBeGreaterThan(10);
  });
});
