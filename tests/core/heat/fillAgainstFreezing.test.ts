import { describe, expect, it } from 'vitest';
import { checkHeat } from '$src/core/heat/checkHeat';
import { wholeContact } from '$src/core/heat/contactArea';
import { fillAgainstFreezing } from '$src/core/heat/fillAgainstFreezing';
import { timeToSolidFraction } from '$src/core/heat/freezingTime';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { modulusAbout, regionModulus } from '$src/core/heat/regionModulus';
import { fromCelsius } from '$src/core/units';
import { FREEZING, GOOD_POUR, HEAT, pourWithHeat } from './pourWithHeat';

const DIE = 1;

describe('contact to full against freezing', () => {
  const pour = pourWithHeat(GOOD_POUR);

  it('knows the modulus of the die: 30 × 60 mm, end wall counted', () => {
    const inside = modulusAbout(pour.heat, pour.mesh, pour.mesh.cells - 5);
    expect(inside).toBeCloseTo((0.03 * 0.06) / (2 * (0.03 + 0.06)), 12);
    const whole = regionModulus(pour.heat, pour.mesh, DIE);
    expect(whole.volume).toBeCloseTo(0.2 * 0.03 * 0.06, 12);
    const area = 0.2 * 2 * (0.03 + 0.06) + 0.03 * 0.06;
    const die = Array.from({ length: pour.mesh.cells }, (_, i) => i).slice(pour.mesh.mouthFace);
    expect(die.reduce((sum, i) => sum + wholeContact(pour.heat.walls, pour.mesh, i), 0)).toBeCloseTo(
      area,
      12,
    );
    expect(whole.thickest).toBeCloseTo(inside, 12);
  });

  it('a 30 mm die fills well before its metal is stiff', () => {
    const die = fillAgainstFreezing(pour.heat, pour.mesh, 2, HEAT.startTemperature)[DIE]!;
    expect(die.full).not.toBeNull();
    expect(die.taken!).toBeGreaterThan(0.5);
    expect(die.taken!).toBeLessThanOrEqual(die.full! - die.firstContact!);
    const contact = { transfer: 1850, dieTemperature: fromCelsius(350) };
    const byHand = timeToSolidFraction(
      FREEZING,
      (0.03 * 0.06) / (2 * (0.03 + 0.06)),
      HEAT.startTemperature,
      contact,
      0.25,
    );
    expect(Math.abs(die.allowed / byHand - 1)).toBeLessThan(0.2);
    expect(die.share!).toBeCloseTo(die.taken! / die.allowed, 12);
    expect(die.share!).toBeLessThan(1);
    expect(die.coldest).toBeLessThan(HEAT.startTemperature);
  });

  it('the same pour against a bare cold die freezes on its way', () => {
    const cold: HeatPlan = {
      ...HEAT,
      regions: [
        { transfer: 1000, dieTemperature: fromCelsius(300), later: null },
        { transfer: 9000, dieTemperature: fromCelsius(100), later: null },
      ],
    };
    const frozen = pourWithHeat({ ...GOOD_POUR, heat: cold });
    const die = fillAgainstFreezing(frozen.heat, frozen.mesh, 2, HEAT.startTemperature)[DIE]!;
    expect(die.share!).toBeGreaterThan(1);
    expect(frozen.heat.solid[frozen.mesh.cells - 1]!).toBeGreaterThan(FREEZING.coherency);
  });
});

describe('checks of the heat', () => {
  it('finds nothing wrong with a sound plan', () => expect(checkHeat(HEAT)).toEqual([]));

  const region = HEAT.regions[0]!;
  it.each([
    ['a solidus over the liquidus', { freezing: { ...FREEZING, solidus: 1000 } }, 'freezing.solidus'],
    ['no latent heat', { freezing: { ...FREEZING, latentHeat: 0 } }, 'freezing.latentHeat'],
    ['a coherency of 25', { freezing: { ...FREEZING, coherency: 25 } }, 'freezing.coherency'],
    ['metal that is freezing already', { startTemperature: fromCelsius(600) }, 'startTemperature'],
    ['a transfer of nothing', { regions: [{ ...region, transfer: 0 }] }, 'regions.0.transfer'],
    [
      'a die that cannot freeze it',
      { regions: [region, { ...region, dieTemperature: fromCelsius(600) }] },
      'regions.1.dieTemperature',
    ],
  ])('refuses %s with path and remedy', (_, change, path) => {
    const issues = checkHeat({ ...HEAT, ...change });
    expect(issues.map((issue) => issue.path)).toContain(path);
    for (const issue of issues) expect(issue.remedy.length).toBeGreaterThan(5);
  });
});
