import { Solver } from 'odex';
import { describe, expect, it } from 'vitest';
import { freezePart, judgeFeeding, type Part } from '$src/core/heat/afterFill';
import {
  cyclesToSettle,
  cycleTimeFor,
  type DieLump,
  dieTemperatures,
  settledDieTemperature,
  shotHeat,
} from '$src/core/heat/dieWarming';
import { COMMON_DWELL, earliestEjection } from '$src/core/heat/ejection';
import { enthalpyOf } from '$src/core/heat/enthalpy';
import { FEEDER_EFFICIENCY } from '$src/core/heat/shrinkage';
import { fromCelsius } from '$src/core/units';
import { FREEZING } from './pourWithHeat';

const WALL: Part = {
  name: 'wall',
  volume: 3e-4,
  modulus: 0.01,
  contact: { transfer: 1850, dieTemperature: fromCelsius(350) },
  temperature: fromCelsius(650),
  gap: null,
};
const FEEDER: Part = { ...WALL, name: 'feeder', volume: 2e-4, modulus: 0.012 };

describe('after the fill', () => {
  it('freezing time is linear in the modulus, and says how far the square law has crept in', () => {
    const thin = freezePart(FREEZING, WALL, 150);
    const thick = freezePart(FREEZING, { ...WALL, modulus: 0.02 }, 150);
    expect(thick.time / thin.time).toBeCloseTo(2, 12);
    expect(thin.biot).toBeCloseTo((1850 * 0.01) / 150, 12);
    expect(thin.power).toBeGreaterThan(1.05);
    expect(thick.power).toBeGreaterThan(thin.power);
    expect(thick.power).toBeLessThan(2);
  });

  /** The note's own consistency check: 10 mm at 450 W/m²K takes about 125 s with superheat (ρ 2550, L 430 kJ/kg). */
  it('a gap makes it a matter of minutes', () => {
    const gap = freezePart(
      FREEZING,
      { ...WALL, gap: { transfer: 450, solidFraction: FREEZING.coherency } },
      150,
    );
    const touching = freezePart(FREEZING, WALL, 150);
    expect(gap.time).toBeGreaterThan(2.5 * touching.time);
    expect(gap.time).toBeLessThan((1850 / 450) * touching.time);
    expect(gap.time).toBeGreaterThan(COMMON_DWELL.shortest);
    expect(gap.time).toBeLessThan(125);
  });

  it('under the linear law a modulus 1.2 times as large gives 20 % of time, not 44 %', () => {
    const feeding = judgeFeeding(FREEZING, [WALL], FEEDER, 0.053, FEEDER_EFFICIENCY.plain);
    expect(feeding.timeRatio).toBeCloseTo(1.2, 12);
    expect(feeding.enough.metal).toBe(false);
    const insulated = judgeFeeding(
      FREEZING,
      [WALL],
      { ...FEEDER, contact: { ...FEEDER.contact, transfer: 500 } },
      0.053,
      FEEDER_EFFICIENCY.insulated,
    );
    expect(insulated.enough).toEqual({ time: true, metal: true });
    expect(() => judgeFeeding(FREEZING, [], FEEDER, 0.053, 0.14)).toThrow(/no parts/);
  });

  it('demand is β/(1 − β) of the casting and β of the feeder, superheat counted', () => {
    const { demand, supply } = judgeFeeding(FREEZING, [WALL], FEEDER, 0.053, 0.14);
    const beta = 0.053 + 1.3e-4 * (WALL.temperature - FREEZING.liquidus);
    expect(demand).toBeCloseTo((3e-4 * beta) / (1 - beta) + 2e-4 * beta, 12);
    expect(supply).toBeCloseTo(0.14 * 2e-4, 15);
  });

  it('is never opened sooner than the dwell proven on real castings', () => {
    expect(earliestEjection([30, 42], 90, true)).toEqual({
      earliest: 90,
      because: 'the dwell you have proven',
      solid: 42,
      withinCommon: true,
    });
    expect(earliestEjection([30, 142], 90, true)).toMatchObject({ earliest: 142, withinCommon: false });
    expect(earliestEjection([30], null, true)).toMatchObject({ earliest: 30, withinCommon: false });
    expect(earliestEjection([30], null, false).withinCommon).toBeNull();
    expect(COMMON_DWELL.mark).toBe('common practice, no source');
  });
});

describe('die warming over cycles', () => {
  const die: DieLump = { mass: 60, heat: 480, area: 0.6, transfer: 20, shopTemperature: fromCelsius(25) };
  const shot = {
    metal: 0.9,
    pouringTemperature: fromCelsius(700),
    ejectionTemperature: fromCelsius(450),
    cycleTime: 240,
  };
  const start = fromCelsius(250);

  it('follows the closed form of a lump that is heated once a cycle', () => {
    const settled = settledDieTemperature(die, FREEZING, shot);
    const kept = Math.exp((-shot.cycleTime * die.transfer * die.area) / (die.mass * die.heat));
    dieTemperatures(die, FREEZING, shot, start, 40).forEach((t, n) => {
      expect(t).toBeCloseTo(settled + (start - settled) * kept ** n, 8);
    });
    const n = cyclesToSettle(die, shot, 0.05);
    const there = dieTemperatures(die, FREEZING, shot, start, n + 1).at(-1)!;
    expect(Math.abs(there - settled)).toBeLessThanOrEqual(0.05 * Math.abs(start - settled));
  });

  it('settles at a wanted temperature with the cycle time found for it', () => {
    for (const wanted of [fromCelsius(200), fromCelsius(350), fromCelsius(420)]) {
      const cycleTime = cycleTimeFor(die, FREEZING, shot, wanted)!;
      expect(settledDieTemperature(die, FREEZING, { ...shot, cycleTime })).toBeCloseTo(wanted, 8);
    }
    expect(cycleTimeFor(die, FREEZING, shot, fromCelsius(20))).toBeNull();
  });

  it('agrees with an ODE solver cycle by cycle', () => {
    const solver = new Solver(1);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
    const capacity = die.mass * die.heat;
    let here = start;
    const cycles = dieTemperatures(die, FREEZING, shot, start, 6);
    for (let n = 1; n < 6; n++) {
      here = solver.solve(
        (_, y) => [(-die.transfer * die.area * (y[0]! - die.shopTemperature)) / capacity],
        0,
        [here + shotHeat(FREEZING, shot) / capacity],
        shot.cycleTime,
      ).y[0]!;
      expect(Math.abs(cycles[n]! - here)).toBeLessThan(1e-6);
    }
  });

  it('a shot gives the die the heat between pouring and ejection', () => {
    const heat = shotHeat(FREEZING, shot);
    const liquid = FREEZING.liquidHeat * (shot.pouringTemperature - FREEZING.liquidus);
    const solid = FREEZING.solidHeat * (FREEZING.solidus - shot.ejectionTemperature);
    expect(heat / 0.9 - liquid - solid).toBeCloseTo(enthalpyOf(FREEZING, FREEZING.liquidus), 6);
  });
});
