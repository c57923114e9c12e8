import { describe, expect, it } from 'vitest';
import { cautionOf } from '$src/core/heat/cautions';
import { thermalOf } from '$src/core/heat/thermalMetals';
import { checkMetal } from '$src/core/metal/checkMetal';
import { criticalSpeed } from '$src/core/metal/criticalSpeed';
import { liquidOf } from '$src/core/metal/liquidOf';
import type { Metal } from '$src/core/metal/metal';
import { METALS, metalNamed } from '$src/core/metal/metals';

const a356 = metalNamed('A356')!;
const withDensity = (value: number): Metal => ({ ...a356, density: { ...a356.density, value } });

describe('metals', () => {
  it('has the three of the shop and three more, each sound and each value with a source', () => {
    expect(METALS.map((metal) => metal.base)).toEqual([
      'A356',
      'AlSi12',
      'aluminium bronze',
      'brass',
      'ZA-12',
      'AZ91',
    ]);
    for (const metal of METALS) {
      expect(checkMetal(metal)).toEqual([]);
      for (const key of [
        'density',
        'viscosity',
        'surfaceTension',
        'contactAngle',
        'pouringTemperature',
      ] as const) {
        expect(metal[key].source.length).toBeGreaterThan(10);
      }
    }
  });

  it('marks the contact angle as assumed', () => {
    expect(METALS.every((metal) => metal.contactAngle.confidence === 'assumed')).toBe(true);
  });

  it('knows the freezing and the caution of each', () => {
    for (const { base } of METALS) {
      const thermal = thermalOf(base)!;
      expect(thermal.solidus).toBeLessThanOrEqual(thermal.liquidus);
      expect(cautionOf(thermal.base)).toMatch(/competent person/);
    }
  });

  it('hands the flow bare numbers', () => {
    const liquid = liquidOf(a356);
    expect(liquid.density).toBe(a356.density.value);
    expect(liquid.criticalSpeed).toBe(criticalSpeed(a356));
  });

  it.each([
    ['density', withDensity(2.4), 'density.value'],
    ['density', withDensity(Number.NaN), 'density.value'],
    ['contact angle', { ...a356, contactAngle: { ...a356.contactAngle, value: 150 } }, 'contactAngle.value'],
    ['critical speed', { ...a356, criticalSpeedOverride: 0 }, 'criticalSpeedOverride'],
  ])('refuses a wrong %s with path and remedy', (_, metal, path) => {
    const issues = checkMetal(metal);
    expect(issues.map((issue) => issue.path)).toEqual([path]);
    expect(issues[0]!.remedy).not.toBe('');
  });
});
