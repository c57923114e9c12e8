import { describe, expect, it } from 'vitest';
import { ALUMINIUM_DENSITY, ladleMass, liquidDensity, solidVolume } from '$src/core/heat/ladleMass';
import {
  aluminiumSiliconShrinkage,
  feederVolumeRatio,
  feedPerSolidVolume,
  liquidPerSolidVolume,
  shrinkageToFeed,
} from '$src/core/heat/shrinkage';
import {
  basinVolume,
  capVolume,
  frustumVolume,
  lyingCylinderVolume,
  sphereVolume,
} from '$src/core/heat/volumes';
import { fromCelsius } from '$src/core/units';
import F01 from '../../tables/heat/F01_ladle_mass.json';
import F02 from '../../tables/heat/F02_volumes.json';
import F03 from '../../tables/heat/F03_shrinkage.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

const TEN_LITRES = 0.01;

describe('mass and volume', () => {
  /** Source: Assael et al. 2006: title and uncertainty read, constants from memory. */
  it.each(F01.rows.map((row) => [entry(F01, row, 'T_C'), row] as const))(
    'F01 aluminium at %d °C',
    (t, row) => {
      const density = liquidDensity(ALUMINIUM_DENSITY, fromCelsius(t));
      const mass = ladleMass(density, TEN_LITRES);
      expect(relativeError(density, entry(F01, row, 'rho_kgpm3'))).toBeLessThan(HALF_A_DIGIT);
      expect(relativeError(mass, entry(F01, row, 'mass_10L_kg'))).toBeLessThan(HALF_A_DIGIT);
      expect(
        relativeError(
          solidVolume(mass, 2700) / (TEN_LITRES / 10),
          entry(F01, row, 'solid_volume_at_20C_L_(rho=2700)'),
        ),
      ).toBeLessThan(HALF_A_DIGIT);
    },
  );

  const BODIES = [
    frustumVolume(0.1, 0.14, 0.25),
    capVolume(0.12, 0.05),
    sphereVolume(0.05),
    lyingCylinderVolume(0.1, 0.5, 0.06),
    basinVolume([0.3, 0.2], [0.34, 0.26], 0.1),
  ];

  it.each(F02.rows.map((row, k) => [String(row[0]), row, k] as const))('F02 %s', (_, row, k) => {
    const density = liquidDensity(ALUMINIUM_DENSITY, fromCelsius(720));
    expect(relativeError(BODIES[k]!, entry(F02, row, 'volume_m3'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(ladleMass(density, BODIES[k]!), entry(F02, row, 'mass_Al_720C_kg'))).toBeLessThan(
      HALF_A_DIGIT,
    );
  });

  /** Source: Magnusson & Arnberg 2001, abstract read. */
  it.each(F03.rows.map((row, k) => [String(row[0]), row, [0, 0.116, 0.07][k]!] as const))(
    'F03 %s',
    (_, row, silicon) => {
      const shrinkage = aluminiumSiliconShrinkage(silicon);
      expect(relativeError(shrinkage, entry(F03, row, 'beta=(Vl-Vs)/Vl'))).toBeLessThan(HALF_A_DIGIT);
      expect(
        relativeError(liquidPerSolidVolume(shrinkage), entry(F03, row, 'liquid_needed_per_solid_volume')),
      ).toBeLessThan(HALF_A_DIGIT);
      expect(
        relativeError(feedPerSolidVolume(shrinkage), entry(F03, row, 'feed_volume_per_solid_volume')),
      ).toBeLessThan(HALF_A_DIGIT);
    },
  );

  /** ε V_f = α (V_f + V_c), ε 0.14 (Campbell and handbooks, from memory). */
  it.each([
    [0.044, 0.46],
    [0.053, 0.61],
    [0.066, 0.89],
  ])('a plain feeder for %d of shrinkage is %d of the casting', (shrinkage, ratio) => {
    expect(Math.abs(feederVolumeRatio(shrinkage, 0.14) - ratio)).toBeLessThan(0.0051);
  });

  it('A356 poured 100 K hot asks its feeder for 6.6 %, not 5.3 %', () => {
    expect(shrinkageToFeed(0.053, 100)).toBeCloseTo(0.066, 4);
    expect(shrinkageToFeed(0.053, -20)).toBe(0.053);
    expect(feederVolumeRatio(0.14, 0.14)).toBe(Number.POSITIVE_INFINITY);
  });
});
